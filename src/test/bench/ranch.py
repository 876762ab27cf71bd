#!/usr/bin/env python3
"""Invented ranch in the open ocean for timing: F square fields of 800 m, N saturated pastes in each.
usage: ranch.py FOLDER F N   writes fields.geojson and samples.csv"""
import json, math, os, random, sys

folder, fields, sites = sys.argv[1], int(sys.argv[2]), int(sys.argv[3])
os.makedirs(folder, exist_ok=True)
random.seed(1)
EAST, NORTH = 111320 * math.cos(math.radians(30)), 110850
waves = [(random.uniform(0, 2 * math.pi), random.uniform(150, 900), random.uniform(0, 6.28)) for _ in range(40)]
lon = lambda x: round(-153 + x / EAST, 8)
lat = lambda y: round(30 + y / NORTH, 8)


def ece(x, y):
    s = sum(math.cos(2 * math.pi * (x * math.cos(a) + y * math.sin(a)) / w + p) for a, w, p in waves)
    return math.exp(1.2 + 0.7 * s / math.sqrt(20))


features, rows = [], ["id,lon,lat,depth,method,ec,unit"]
side = math.ceil(math.sqrt(fields))
for f in range(fields):
    x0, y0 = 900 * (f % side), 900 * (f // side)
    ring = [[lon(x0 + dx), lat(y0 + dy)] for dx, dy in ((0, 0), (800, 0), (800, 800), (0, 800), (0, 0))]
    features.append({"type": "Feature", "properties": {"field": f"F{f:04d}", "texture": "loam"},
                     "geometry": {"type": "Polygon", "coordinates": [ring]}})
    for s in range(sites):
        x, y = x0 + random.uniform(10, 790), y0 + random.uniform(10, 790)
        value = ece(x, y) * math.exp(random.gauss(0, 0.1))
        rows.append(f"F{f:04d}S{s:03d},{lon(x)},{lat(y)},0-90 cm,paste,{value:.2f},dS/m")
json.dump({"type": "FeatureCollection", "features": features}, open(f"{folder}/fields.geojson", "w"))
open(f"{folder}/samples.csv", "w").write("\n".join(rows) + "\n")
