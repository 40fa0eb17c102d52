#!/bin/sh
# Writes wall.json anew.
cd "$(dirname "$0")" && python3 wall.py > wall.json
