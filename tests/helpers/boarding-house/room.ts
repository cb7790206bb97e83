/** The dimensions of the boarding house, and a builder for one of its rooms. Lengths in inches; the plan holds mm. */
import type { Detector, Fixture, FixtureKind, Opening, PlanObject, RoomUse } from '../../../geometry/plan/model.ts';

export const DEPTH = 192;
export const THIN = 4.5;
export const CORRIDOR = { top: 196.5, bottom: 268.5 };
export const SOUTH = { top: 273, bottom: 465 };
export const WIDTHS = [150, 126, 132, 120, 138, 126, 120, 144, 132, 126, 138, 120, 132, 156];

export interface Cell {
  readonly id: string;
  readonly row: 'north' | 'south';
  readonly use: RoomUse;
  readonly left: number;
  readonly width: number;
  readonly name: string;
}

/** The parts of the level while it is furnished. */
export interface Draft {
  readonly openings: Opening[];
  readonly fixtures: Fixture[];
  readonly objects: PlanObject[];
  readonly detectors: Detector[];
}

/** Adds things to a room by distance from its left wall and from its outside wall, so that both rows are furnished alike. */
export class Room {
  private readonly cell: Cell;
  private readonly draft: Draft;
  constructor(cell: Cell, draft: Draft) {
    this.cell = cell;
    this.draft = draft;
  }

  private at(across: number, deep: number): readonly [number, number] {
    return [mm(this.cell.left + across), mm(this.cell.row === 'north' ? deep : SOUTH.bottom - deep)];
  }

  object(name: string, across: number, deep: number, width: number, depth: number, bottom: number, top: number): void {
    this.draft.objects.push({
      id: `t${this.draft.objects.length + 1}`,
      name,
      shape: { box: { center: this.at(across, deep), width: mm(width), depth: mm(depth), turn: 0 } },
      bottom: mm(bottom),
      top: mm(top),
    });
  }

  lamp(across: number, deep: number, bottom: number): void {
    const shape = { circle: { center: this.at(across, deep), radius: mm(5) } };
    this.draft.objects.push({
      id: `t${this.draft.objects.length + 1}`,
      name: 'Lamp',
      shape,
      bottom: mm(bottom),
      top: mm(bottom + 18),
    });
  }

  fixture(
    kind: FixtureKind,
    across: number,
    deep: number,
    size: number | readonly [number, number],
    bottom: number,
    top: number,
  ): void {
    const center = this.at(across, deep);
    const shape =
      typeof size === 'number'
        ? { circle: { center, radius: mm(size) } }
        : { box: { center, width: mm(size[0]), depth: mm(size[1]), turn: 0 } };
    const id = `f${this.draft.fixtures.length + 1}`;
    this.draft.fixtures.push({ id, kind, name: '', shape, bottom: mm(bottom), top: mm(top), stream: null });
  }

  /** Offsets are measured from the wall's `from` end, which is 5 outside the inside face. The south wall runs from right to left. */
  window(across: number, width: number, bottom: number): void {
    const near = this.cell.left + across - width / 2;
    const north = this.cell.row === 'north';
    const offset = north ? near + 5 : breadthOf() + 5 - (near + width);
    this.opening(north ? 'w1' : 'w3', 'window', offset, width, bottom, 84);
  }

  door(across: number): void {
    this.opening(this.cell.row === 'north' ? 'w5' : 'w6', 'door', this.cell.left + across + 5, 32, 0, 80);
  }

  opening(wall: string, kind: Opening['kind'], offset: number, width: number, bottom: number, top: number): void {
    const id = `o${this.draft.openings.length + 1}`;
    this.draft.openings.push({
      id,
      wall,
      kind,
      offset: mm(offset),
      width: mm(width),
      bottom: mm(bottom),
      top: mm(top),
    });
  }

  detector(label: string, across: number, deep: number, pair: string | null): void {
    const id = `d${this.draft.detectors.length + 1}`;
    this.draft.detectors.push({ id, label, at: this.at(across, deep), base: mm(30), radius: mm(2), tall: mm(1), pair });
  }
}

/** Inside length of both rows. */
function breadthOf(): number {
  return WIDTHS.reduce((sum, width) => sum + width, 0) + THIN * (WIDTHS.length - 1);
}

/** Returns inches in mm, without the rounding error of binary fractions. */
export function mm(inches: number): number {
  return Math.round(inches * 25.4 * 1e6) / 1e6;
}
