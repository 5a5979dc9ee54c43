"""What a deposit is, apart from where it lies: colours (linear RGB), cover, thickness, texture, wetness."""
from dataclasses import dataclass, replace


@dataclass(frozen=True)
class Coat:
    a: tuple = (0.4, 0.25, 0.13)  # main colour
    b: tuple = (0.25, 0.15, 0.08)  # its darker or dirtier variant
    specks: tuple = (0.05, 0.04, 0.03)
    speck: float = 0.0  # 0 none to 1 many
    cover: float = 0.8  # 0 bare to 1 covered
    patchy: float = 0.3  # how far the cover varies from place to place
    scale: float = 0.35  # patches a millimetre
    side: float = 0.0  # extra cover on one side, less on the other
    tone: float = 0.0  # shift from a (-) to b (+)
    tone_range: float = 0.5
    root: float = 0.5  # how much darker towards the root
    thick: float = 0.02  # millimetres at full cover
    kind: str = "film"  # film, powder, fluff, crust or clots
    grain: float = 7.0  # fine features a millimetre
    ragged: float = 0.5  # how torn the edges of patches are
    rough: float = 0.9
    bump: float = 0.25
    wet: float = 0.0

    def but(self, **changes):
        return replace(self, **changes)


NOTHING = Coat(cover=0.0, patchy=0.0, thick=0.0, root=0.0)
