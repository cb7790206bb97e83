import { beyondFace } from '../../../../geometry/dimension/face-lengths.ts';
import { footprintSize } from '../../../../geometry/dimension/footprint.ts';
import { facingOf } from '../../../../geometry/dimension/opening-offsets.ts';
import type { RunningDimension } from '../../../../geometry/dimension/running-dimensions.ts';
import { endsAtSlant, moveToGap, wallGaps } from '../../../../geometry/dimension/wall-gaps.ts';
import {
  type DimensionMoves,
  isOutsideAt,
  isWidth,
  movableEnds,
  withDimension,
} from '../../../../geometry/edit/dimension-edit.ts';
import { movedItems } from '../../../../geometry/edit/index.ts';
import type { LevelModel } from '../../../../geometry/level/types.ts';
import {
  ALONG_PAGE,
  capital,
  cornerWords,
  gapRefusal,
  heightsRefusal,
  openingRefusal,
  WALL_ON,
  wallEndNames,
} from '../../../../geometry/messages/index.ts';
import { TAPED_BY_NAME } from '../../../../geometry/messages/taped-by.ts';
import type { Fixture, Level, Mm, Opening, PlanObject, XY } from '../../../../geometry/plan/model.ts';
import { shapeMiddle } from '../../../../geometry/plane/body.ts';
import { along } from '../../../../geometry/plane/point.ts';
import { jambs } from '../../../../geometry/snap/pick.ts';
import { editLevel } from '../../../state/edit-walls.ts';
import { refuseLocked } from '../../../state/locked-detectors.ts';
import { selectModel } from '../../../state/selectors.ts';
import { resizeThing } from '../../../state/shape-edits.ts';
import { useAppStore } from '../../../state/store.ts';
import { drawnDimensions } from '../../drawing.ts';
import type { LengthSubject, SizePart } from '../store.ts';
import { axisOf, gapsOf, groundOf } from '../subject.ts';

/** A length as it is now, and what typing another one does. */
export interface ReadLength {
  /** What it measures, in a word or two. */
  readonly label: string;
  readonly value: Mm;
  /** Where it is on the plan. */
  readonly at: XY;
  /** The unit of a number without a unit: the large or the small one of the plan's. */
  readonly bare: 'large' | 'small';
  readonly negative: boolean;
  /** Whether it is taped from wall to wall, so that it can be taped inside, outside or by center-lines. */
  readonly isBetweenWalls?: boolean;
  /** The ends that can move, the usual one first, and their names; with one or none there is no choice. */
  readonly ends: readonly { readonly moves: DimensionMoves; readonly words: string }[];
  /** Sets the length. Returns the reason of a refusal, in words; empty on success. */
  readonly commit: (mm: Mm, moves: DimensionMoves | null) => string;
}

/** Returns a length as it is in the plan now; null if the plan no longer has it. */
export function readLength(subject: LengthSubject): ReadLength | null {
  const model = selectModel(useAppStore.getState());
  switch (subject.of) {
    case 'face':
      return faceLength(model, subject.dimension, subject.moves);
    case 'gap':
      return gapLength(model, subject.id, subject.axis);
    case 'size':
      return sizeLength(model, subject.id, subject.part);
  }
}

function faceLength(model: LevelModel, wanted: RunningDimension, usual?: DimensionMoves): ReadLength | null {
  const dimension = drawnDimensions(model).find(({ key }) => key === wanted.key);
  if (!dimension) return null;
  const names = wallEndNames(dimension);
  const movable = movableEnds(model, dimension);
  const ends = usual && movable.includes(usual) ? [usual, ...movable.filter((end) => end !== usual)] : movable;
  const { by } = useAppStore.getState().wallSettings;
  const isBetweenWalls = dimension.row === 'whole';
  const beyond = isBetweenWalls ? beyondFace(model, dimension, by) : 0;
  return {
    label: isBetweenWalls ? TAPED_BY_NAME[by] : partLabel(model, dimension),
    value: dimension.length + beyond,
    isBetweenWalls,
    at: along(dimension.from, dimension.to, 0.5),
    bare: isWidth(dimension) ? 'small' : 'large',
    negative: false,
    ends: ends.map((moves) => ({
      moves,
      // Without a choice an opening needs no direction: the page's could differ from that of its wall.
      words: capital(
        `${isBetweenWalls || ends.length > 1 ? `${names[moves]} ` : ''}${endWords(model, dimension, moves)}`,
      ),
    })),
    commit: (mm, moves) => {
      const { wholeInView } = useAppStore.getState();
      const refusal = editLevel((now, unit) =>
        withDimension(now, dimension, mm - beyond, moves ?? ends[0] ?? 'to', unit),
      );
      // Keeps a room that has grown in view.
      if (!refusal && wholeInView) useAppStore.getState().fit();
      return refusal;
    },
  };
}

function endWords(model: LevelModel, dimension: RunningDimension, moves: DimensionMoves): string {
  if (isWidth(dimension)) return 'jamb';
  if (dimension.row !== 'whole') return endNoun(model.level, dimension, moves);
  return isOutsideAt(model, dimension, moves) ? 'wall' : 'partition';
}

function partLabel(model: LevelModel, dimension: RunningDimension): string {
  const { level } = model;
  const nouns = (['from', 'to'] as const).map((end) => endNoun(level, dimension, end)) as [string, string];
  if (isWidth(dimension)) return `Width of the ${nouns[0]}`;
  const at = dimension.ends.findIndex(({ kind }) => kind === 'corner');
  if (at < 0) return `${capital(nouns[0])} to ${nouns[1]}`;
  const { name, seen } = cornerWords([dimension.from, dimension.to], facingFrom(model, dimension))[
    at === 0 ? 'from' : 'to'
  ];
  nouns[at] = `${name} corner`;
  return `${capital(nouns[0])} to ${nouns[1]}, ${seen}`;
}

/** The direction in which one looks at the wall from its only room, at the opening that the dimension positions; null for none. */
function facingFrom(model: LevelModel, { ends }: RunningDimension): XY | null {
  const jamb = ends.find((end) => end.kind === 'jamb');
  const opening = jamb && model.level.openings.find(({ id }) => id === jamb.opening);
  const wall = opening && model.level.walls.find(({ id }) => id === opening.wall);
  return wall ? facingOf(model, wall, opening) : null;
}

function endNoun(level: Level, { row, ends }: RunningDimension, moves: DimensionMoves): string {
  if (row === 'whole') return 'wall';
  const end = ends[moves === 'from' ? 0 : 1];
  const opening = end.kind === 'jamb' ? level.openings.find(({ id }) => id === end.opening) : undefined;
  return opening ? opening.kind : 'corner';
}

function allGapsOf(model: LevelModel, id: string) {
  const ground = groundOf(model.level, id);
  return ground && wallGaps(model, ground.middle, ground.reach);
}

function gapLength(model: LevelModel, id: string, axis: 0 | 1): ReadLength | null {
  const near = gapsOf(model, id)?.find((each) => axisOf(each) === axis);
  if (!near) return null;
  const { side, gap, line } = near;
  const ground = groundOf(model.level, id);
  const taped = ground && endsAtSlant(model, ground.middle, near) ? `, ${ALONG_PAGE[side]}` : '';
  return {
    label: `From the ${WALL_ON[side]} wall${taped}`,
    value: gap,
    at: along(line[0], line[1], 0.5),
    bare: 'large',
    negative: false,
    ends: [],
    commit: (mm) => {
      const state = useAppStore.getState();
      const gaps = allGapsOf(model, id);
      const refusal = (gaps && gapRefusal(gaps, side, mm, state.plan.display.length)) || refuseLocked(state, [id]);
      if (refusal) return refusal;
      const [dx, dy] = moveToGap(side, gap, mm);
      return state.run((plan) => movedItems(plan, model.level.id, [id], dx, dy));
    },
  };
}

const PART_WORDS: Readonly<Record<SizePart, string>> = {
  across: 'Across',
  width: 'Width',
  depth: 'Depth',
  bottom: 'Underside above the floor',
  top: 'Top above the floor',
};

function sizeLength(model: LevelModel, id: string, part: SizePart): ReadLength | null {
  const { level } = model;
  const opening = level.openings.find((each) => each.id === id);
  if (opening && (part === 'bottom' || part === 'top')) return openingHeight(level, opening, part);
  const thing = [...level.fixtures, ...level.objects].find((each) => each.id === id);
  if (!thing) return null;
  const upright = part === 'bottom' || part === 'top';
  const value = upright ? thing[part] : footprintSize(thing.shape)[part];
  if (value === null || 'polygon' in thing.shape) return null;
  return {
    label: PART_WORDS[part],
    value,
    at: shapeMiddle(thing.shape),
    bare: 'small',
    negative: upright,
    ends: [],
    commit: (mm) => (upright ? withHeight(level, thing, { [part]: mm }) : resizeThing(thing, part, mm)),
  };
}

function withHeight(level: Level, thing: Fixture | PlanObject, patch: { bottom?: Mm; top?: Mm }): string {
  const { plan, updateItem } = useAppStore.getState();
  const { bottom, top } = { ...thing, ...patch };
  return heightsRefusal(bottom, top, level.ceiling, plan.display.length) || updateItem(thing.id, patch);
}

function openingHeight(level: Level, opening: Opening, part: 'bottom' | 'top'): ReadLength | null {
  const ends = jambs(level, opening);
  if (!ends) return null;
  const { plan, updateItem } = useAppStore.getState();
  return {
    label: part === 'bottom' ? 'Sill above the floor' : 'Head above the floor',
    value: opening[part],
    at: along(ends[0], ends[1], 0.5),
    bare: 'small',
    negative: part === 'bottom',
    ends: [],
    commit: (mm) =>
      openingRefusal(level, { ...opening, [part]: mm }, plan.display.length) || updateItem(opening.id, { [part]: mm }),
  };
}
