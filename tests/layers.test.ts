import { readdirSync, readFileSync } from 'node:fs';
import { posix } from 'node:path';
import { describe, expect, it } from 'vitest';

/*
 * Who may import whom: a folder imports itself and what its row names, and every row names rows above it alone. Types count as much as
 * code. An arrow that should not be stands among the exceptions until it is gone.
 */
const GEOMETRY = {
  plane: [],
  units: ['plane'],
  plan: ['plane'],
  rules: ['plan', 'plane'],
  planfile: ['plan', 'plane', 'rules', 'units'],
  arrangement: ['plane'],
  level: ['arrangement', 'plan', 'plane'],
  check: ['level', 'plan', 'plane', 'rules'],
  region: ['arrangement', 'check', 'level', 'plan', 'plane', 'rules'],
  snap: ['check', 'level', 'plan', 'plane'],
  dimension: ['level', 'plan', 'plane', 'snap'],
  search: ['arrangement', 'check', 'dimension', 'level', 'plan', 'plane', 'region', 'rules', 'snap'],
  recheck: ['plan', 'rules'],
  messages: ['check', 'dimension', 'level', 'plan', 'plane', 'recheck', 'region', 'rules', 'search', 'snap', 'units'],
  edit: ['check', 'dimension', 'level', 'messages', 'plan', 'plane', 'planfile', 'snap', 'units'],
} satisfies Readonly<Record<string, readonly string[]>>;
