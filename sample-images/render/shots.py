"""The list of pictures: which plug in which state, where, how and when it is photographed. All scenarios are invented."""
import datetime
import random
import zlib

# place, offset from UTC in hours, start of each tray in local time
JOBS = {
    "orchard-truck": ("shop", 1, {"as-found": "2026-03-02 10:14:05"}),
    "harbour-launch": ("harbour", 2, {"as-found": "2026-04-18 13:02:30"}),
    "standby-generator": ("generator", 2, {"as-found": "2026-05-07 17:40:12"}),
    "delivery-van": ("van", 2, {"as-found": "2026-06-11 10:21:17", "after": "2026-06-11 12:05:44"}),
    "library-bus": ("bus", 1, {"as-found": "2026-01-22 17:48:03"}),
}
# How the phone was held: upright (needs tag 6 or 8 to show so), or lying but with the sensor's idea of up a quarter off.
PORTRAIT = {"orchard-truck/as-found-02-end-on": 6, "harbour-launch/as-found-05-end-on": 8, "delivery-van/as-found-02-end-on": 6,
            "library-bus/as-found-03-end-on": 8, "standby-generator/as-found-07-end-on": 6}
TURNED = {"standby-generator/as-found-06-end-on": 6, "delivery-van/after-04-end-on": 8}


def _number(text):
    return zlib.crc32(text.encode()) % 100000


def _tray(job, tray, looks, extra=()):
    """`looks`: one a cylinder. `extra`: (cylinder, shot, before) besides the end-on views."""
    place, offset, starts = JOBS[job]
    zone = datetime.timezone(datetime.timedelta(hours=offset))
    when = datetime.datetime.strptime(starts[tray], "%Y-%m-%d %H:%M:%S").replace(tzinfo=zone)
    chance = random.Random(_number(job + tray))
    for cylinder, look in enumerate(looks, 1):
        order = [s for c, s, before in extra if c == cylinder and before] + ["end-on"] + [s for c, s, before in extra if c == cylinder and not before]
        for shot in order:
            key = f"{job}/{tray}-{cylinder:02d}-{shot}"
            yield dict(key=key, job=job, tray=tray, cylinder=cylinder, shot=shot, look=look, place=place, when=when,
                       plug_seed=_number(f"{job}/{tray}/{cylinder}"), shot_seed=_number(key), portrait=key in PORTRAIT,
                       orientation=PORTRAIT.get(key) or TURNED.get(key) or 1,
                       outer_oil=key.startswith("delivery-van/as-found-03"))
            when += datetime.timedelta(seconds=chance.uniform(8, 20))


def all_shots():
    n, g = "normal", "normal, greyish"
    yield from _tray("orchard-truck", "as-found", [n, n, n, "oil-wetted", n, n], [(4, "side", False)])
    yield from _tray("harbour-launch", "as-found", [n, "lean", n, "lean", n, "lean"])
    yield from _tray("standby-generator", "as-found", [g, g, "coolant", g, "coolant", g, g, g], [(3, "side", False), (5, "side", False)])
    yield from _tray("delivery-van", "as-found", ["normal, worn"] * 4, [(3, "well", True), (3, "whole", False)])
    yield from _tray("delivery-van", "after", ["new"] * 4, [(3, "well", True)])
    yield from _tray("library-bus", "as-found", ["rich", "carbon", "rich", "rich"])
