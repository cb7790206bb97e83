import { create } from 'zustand';
import type { Check } from '../../geometry/check/types.ts';
import type { Mm, XY } from '../../geometry/plan/model.ts';
import type { Line, Ring } from '../../geometry/plane/types.ts';

/** A good place that the sheet marks. */
export interface SpotMark {
  /** "1"; what stands on the mark. */
  readonly name: string;
  /** One axis, or those of detectors side by side. */
  readonly axes: readonly XY[];
  readonly radius: Mm;
  /** What limits it, with the line of measurement; null where nothing does. */
  readonly limit: Check | null;
}

/** Corners from which lengths are taped that are being typed in. */
export interface MarkedCorners {
  readonly levelId: string;
  /** The diagonals of a room, or from a corner to a jamb. */
  readonly lines: readonly Line[];
  /** Of the corners where the lines begin, then of those where they end. */
  readonly letters: string;
}

/** What the panels ask the sheet to show beside the plan. Never in the plan, never in the history. */
interface Shown {
  /** The level that the marks and the air belong to. */
  readonly levelId: string;
  readonly spots: readonly SpotMark[];
  /** A place for detectors side by side; null while it is not pointed at. */
  readonly group: SpotMark | null;
  /** The one of `spots` that is looked at, by its name: with its measured line. */
  readonly lit: string | null;
  /** The route of the air round the walls, from a fixture to a detector. */
  readonly air: readonly XY[] | null;
  /** The floor in the sun at one moment, or on days that are not planned; null for none. */
  readonly sun: readonly Ring[] | null;
  /** Whether the sun of a day is played on the plan, under Place. */
  readonly playsDay: boolean;
  /** Place of the moment in the list of those that are played; null until one was chosen. */
  readonly dayMoment: number | null;
  readonly corners: MarkedCorners | null;
}

const NOTHING: Shown = {
  ...{ levelId: '', spots: [], group: null, lit: null, air: null, corners: null },
  ...{ sun: null, playsDay: false, dayMoment: null },
};

export const useShown = create<Shown>()(() => NOTHING);

const NO_SPOTS: readonly SpotMark[] = [];

/** The good places that are marked on a level: names keep off them. */
export function spotsOn(levelId: string, shown: Shown): readonly SpotMark[] {
  return shown.levelId === levelId ? shown.spots : NO_SPOTS;
}
