import type { Step } from '../pointer.ts';
import { type JsonTrouble, scanJson } from './json-scan.ts';

export type JsonText =
  | { readonly ok: true; readonly value: unknown; readonly doubled: readonly (readonly Step[])[] }
  | ({ readonly ok: false } & JsonTrouble & { readonly line: number; readonly column: number });

/**
 * Reads JSON text (RFC 8259) and says where it goes wrong: line and column, both from 1. A byte order mark in front is
 * passed over. `doubled` are the places of keys that stand twice in one object: the standard reader would drop the first
 * without a word. Never throws.
 */
export function readJson(text: string): JsonText {
  const body = text.startsWith('\uFEFF') ? text.slice(1) : text;
  const scan = scanJson(body);
  if (!scan.ok) return { ...scan, ...lineAndColumn(body, scan.at) };
  return { ok: true, value: JSON.parse(body), doubled: scan.doubled };
}

function lineAndColumn(text: string, at: number): { line: number; column: number } {
  const lines = text.slice(0, at).split(/\r\n|\r|\n/);
  return { line: lines.length, column: (lines.at(-1) ?? '').length + 1 };
}
