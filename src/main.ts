#!/usr/bin/env node
process.stderr.write('nothing here yet\n');
