"""The list of pictures: which plug in which state, where and how it is photographed. Invented scenarios."""


def _row(job, scene, tray, cylinder, shot, condition, date, **details):
    return dict(job=job, scene=scene, tray=tray, cylinder=cylinder, shot=shot, condition=condition, date=date, details=details)


def all_shots():
    shots = []

    def end_on(job, scene, tray, date, conditions):
        shots.extend(_row(job, scene, tray, i + 1, "end-on", one, date) for i, one in enumerate(conditions))

    end_on("orchard-truck", "shop", "as-found", "2026-03-02 09:14:05", ["normal", "normal", "normal", "oil-wetted", "normal", "normal"])
    shots.append(_row("orchard-truck", "shop", "as-found", 4, "side", "oil-wetted", "2026-03-02 09:16:40"))
    end_on("harbour-launch", "harbour", "as-found", "2026-04-18 11:02:30", ["normal", "lean", "normal", "lean", "normal", "lean"])
    end_on("standby-generator", "generator", "as-found", "2026-05-07 15:40:12",
           ["normal-grey", "normal-grey", "coolant", "normal-grey", "coolant", "normal-grey", "normal-grey", "normal-grey"])
    shots.append(_row("standby-generator", "generator", "as-found", 3, "side", "coolant", "2026-05-07 15:43:30"))
    shots.append(_row("standby-generator", "generator", "as-found", 5, "side", "coolant", "2026-05-07 15:43:52"))
    end_on("delivery-van", "van", "as-found", "2026-06-11 08:21:17", ["worn", "worn", "worn", "worn"])
    shots.append(_row("delivery-van", "van", "as-found", 3, "whole", "worn", "2026-06-11 08:22:50", outer_oil=0.62))
    shots.append(_row("delivery-van", "van", "as-found", 3, "well", "worn", "2026-06-11 08:23:20", outer_oil=0.4, well_oil=True))
    end_on("delivery-van", "van", "after", "2026-06-11 10:05:44", ["new", "new", "new", "new"])
    shots.append(_row("delivery-van", "van", "after", 3, "well", "new", "2026-06-11 10:07:10"))
    end_on("library-bus", "bus", "as-found", "2026-01-22 16:48:03", ["rich", "carbon", "rich", "rich"])
    return shots


def file_name(shot):
    return f"{shot['job']}/{shot['tray']}-{shot['cylinder']:02d}-{shot['shot']}.jpg"
