"""Loads a library's lineage into networkx and answers, for each packet: ancestry, descent, holders. Prints [load seconds, query seconds]."""
import json
import sqlite3
import sys
import time

import networkx

start = time.perf_counter()
db = sqlite3.connect(f"file:{sys.argv[1]}?mode=ro", uri=True)
graph = networkx.DiGraph()
graph.add_edges_from(db.execute("SELECT parent_id, child_id FROM lineage_edges"))
holder = dict(db.execute("SELECT id, holder_id FROM packets WHERE holder_id IS NOT NULL"))
loaded = time.perf_counter()
for line in open(sys.argv[2]):
    packet = int(line)
    up = networkx.ancestors(graph, packet)
    down = networkx.descendants(graph, packet)
    held = [(node, holder[node]) for node in down | {packet} if node in holder]
print(json.dumps([loaded - start, time.perf_counter() - loaded]))
