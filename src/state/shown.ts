import { create } from 'zustand';
import type { Check } from '../../geometry/check/types.ts';
import type { Mm, XY } from '../../geometry/plan/model.ts';
import type { Line, Ring } from '../../geometry/plane/types.ts';

/** A good place that the sheet marks. */
export interface SpotMark {
  /** The text on the mark, such as "1". */
  readonly name: string;
  /** One axis, or those of detectors side by side. */
  readonly axes: readonly XY[];
  readonly radius: Mm;
  /** The check that limits it, with its measured line; null for none. */
  readonly limit: Check | null;
}

/** Corners from which the lengths are taped that are being typed. */
export interface MarkedCorners {
  readonly levelId: string;
  /** The diagonals of a room, or from a corner to a jamb. */
  readonly lines: readonly Line[];
  /** Letters of the corners where the lines begin, then of those where they end. */
  readonly letters: string;
}

/** What the panels ask the sheet to show in addition to the plan. Not part of the plan or of the history. */
interface Shown {
  /** The level that the marks and the air belong to. */
  readonly levelId: string;
  readonly spots: readonly SpotMark[];
  /** A place for detectors side by side; null unless it is pointed at. */
  readonly group: SpotMark | null;
  /** Name of the one of `spots` that is highlighted, with its measured line; null for none. */
  readonly lit: string | null;
  /** The route of the air round the walls, from a fixture to a detector. */
  readonly air: readonly XY[] | null;
  /** The floor in the sun at one moment, or on days that are not planned; null for none. */
  readonly sun: readonly Ring[] | null;
  /** Whether the sun of a day is played on the plan, under Place. */
  readonly playsDay: boolean;
  /** Index of the moment in the list of those that are played; null until one is chosen. */
  readonly dayMoment: number | null;
  readonly corners: MarkedCorners | null;
}

const NOTHING: Shown = {
  ...{ levelId: '', spots: [], group: null, lit: null, air: null, corners: null },
  ...{ sun: null, playsDay: false, dayMoment: null },
};

export const useShown = create<Shown>()(() => NOTHING);

const NO_SPOTS: readonly SpotMark[] = [];

/** Returns the good places that are marked on a level; names do not cover them. */
export function spotsOn(levelId: string, shown: Shown): readonly SpotMark[] {
  return shown.levelId === levelId ? shown.spots : NO_SPOTS;
}
