"""Writes ../truth.json, what each picture shows, from the list of pictures. Run: python3 truth.py"""
import json
import os

from shots import all_shots

here = os.path.dirname(os.path.abspath(__file__))
CONDITION = {"normal": "normal", "normal, greyish": "normal", "normal, worn": "normal", "new": "normal"}
DETAILS = {
    "normal": dict(insulatorColour="tan", wetness="dry", electrodeWear="sharp", deposits=[]),
    "normal, greyish": dict(insulatorColour="light tan", wetness="dry", electrodeWear="sharp", deposits=[]),
    "normal, worn": dict(insulatorColour="tan", wetness="dry", electrodeWear="rounded", deposits=[]),
    "new": dict(insulatorColour="chalk white", wetness="dry", electrodeWear="sharp", deposits=[], new=True),
    "lean": dict(insulatorColour="chalk white", wetness="dry", electrodeWear="rounded", deposits=[]),
    "rich": dict(insulatorColour="dark brown", wetness="dry", electrodeWear="sharp", deposits=[dict(kind="soot", place="nose"), dict(kind="soot", place="shell rim")]),
    "carbon": dict(insulatorColour="black", wetness="dry", electrodeWear="sharp",
                   deposits=[dict(kind="soot", place=p) for p in ("nose", "shell rim", "strap")]),
    "oil-wetted": dict(insulatorColour="black", wetness="wet", electrodeWear="sharp",
                       deposits=[dict(kind="wet oil", place=p) for p in ("nose", "shell rim", "strap")]),
    "coolant": dict(insulatorColour="chalk white", wetness="dry", electrodeWear="sharp",
                    deposits=[dict(kind="coolant crust", place=p) for p in ("one side", "shell rim", "strap")]),
}


def entry(shot):
    details = json.loads(json.dumps(DETAILS[shot["look"]]))
    if shot["outer_oil"]:
        details["deposits"] += [dict(kind="wet oil", place="outer body"), dict(kind="wet oil", place="well")]
    return dict(file=f"photos/{shot['key']}.jpg", job=shot["job"], tray=shot["tray"], cylinder=shot["cylinder"], shot=shot["shot"],
                condition=CONDITION.get(shot["look"], shot["look"]), details=details, orientation=shot["orientation"],
                taken=shot["when"].isoformat(timespec="milliseconds"))


def main():
    with open(os.path.join(here, "..", "truth.json"), "w", encoding="utf8") as out:
        json.dump([entry(shot) for shot in all_shots()], out, indent=1)
        out.write("\n")


if __name__ == "__main__":
    main()
