import { capital, FIXTURE_NOUN, ROOM_USE_NOUN } from '../../geometry/messages/index.ts';
import { USUAL_DETECTOR } from '../../geometry/plan/items.ts';
import {
  type FixtureKind,
  type Level,
  type OpeningKind,
  ROOM_USES_ALLOWED,
  ROOM_USES_BARRED,
  type RoomUse,
} from '../../geometry/plan/model.ts';
import { formatLength, type LengthUnit } from '../../geometry/units/index.ts';
import type { QuestionId } from '../advice/walk-round.ts';
import { FIXTURE_DEFAULTS, OBJECT_DEFAULTS, OBJECT_PRESETS, OPENING_DEFAULTS, type UsualSize } from './defaults.ts';
import { fixtureLike, objectLike, openingLike } from './last-sizes.ts';
import type { Tool } from './tool.ts';

export interface Answer {
  readonly name: string;
  readonly tool: Tool;
  /** The usual size of what the tool places, in words; empty if it has none. */
  readonly usual: (unit: LengthUnit) => string;
  /** Heading that begins a new group; empty within one. */
  readonly group: string;
}
export interface Question {
  readonly id: QuestionId;
  readonly asks: string;
  /** What the trade calls it. */
  readonly trade: string;
  readonly answers: readonly Answer[];
}

const none = () => '';
const answer = (name: string, tool: Tool, usual: Answer['usual'] = none, group = ''): Answer => ({
  name,
  tool,
  usual,
  group,
});

/** Returns the size of what an answer's tool places on this level, in words: that of the last one of its kind, or the usual one. */
export function likeWords(level: Level, { tool, usual }: Answer, unit: LengthUnit): string {
  if (tool.kind === 'fixture') return sizeWords(fixtureLike(level, tool.fixture))(unit);
  if (tool.kind === 'object') return sizeWords(objectLike(level, tool.object))(unit);
  if (tool.kind === 'opening') return `${formatLength(openingLike(level, tool.opening).width, unit)} wide`;
  return usual(unit);
}

function sizeWords({ footprint }: UsualSize): Answer['usual'] {
  return (unit) =>
    'across' in footprint
      ? `${formatLength(footprint.across, unit)} across`
      : `${formatLength(footprint.width, unit)} × ${formatLength(footprint.depth, unit)}`;
}

const fixture = (kind: FixtureKind): Answer =>
  answer(capital(FIXTURE_NOUN[kind]), { kind: 'fixture', fixture: kind }, sizeWords(FIXTURE_DEFAULTS[kind]));
const opening = (kind: OpeningKind): Answer =>
  answer(
    capital(kind),
    { kind: 'opening', opening: kind },
    (unit) => `${formatLength(OPENING_DEFAULTS[kind].width, unit)} wide`,
  );
const use = (kind: RoomUse, group = ''): Answer =>
  answer(capital(ROOM_USE_NOUN[kind]), { kind: 'room', use: kind }, none, group);

/** What a tester asks on a walk round the room, each with the few things that answer it; "none here" is an answer too. */
export const QUESTIONS: readonly Question[] = [
  {
    id: 'closes',
    asks: 'What closes the room?',
    trade: 'Exterior and interior walls',
    answers: [answer('Four walls in one drag', { kind: 'room-box' }), answer('Wall after wall', { kind: 'wall' })],
  },
  {
    id: 'opens',
    asks: 'What opens it?',
    trade: 'Doors, windows, passages',
    answers: [opening('door'), opening('window'), opening('passage')],
  },
  {
    id: 'used',
    asks: 'What is it used for?',
    trade: 'Room use',
    answers: [
      ...ROOM_USES_ALLOWED.map((kind, index) => use(kind, index === 0 ? 'Detector allowed' : '')),
      ...ROOM_USES_BARRED.map((kind, index) => use(kind, index === 0 ? 'No detector allowed' : '')),
    ],
  },
  {
    id: 'air',
    asks: 'What moves air?',
    trade: 'Airflow: HVAC, fans, filters',
    answers: (
      [
        'supply-register',
        'return-grille',
        'exhaust-fan',
        'ceiling-fan',
        'portable-fan',
        'window-air-conditioner',
        'air-cleaner',
        'dehumidifier',
        'humidifier',
      ] as const
    ).map(fixture),
  },
  {
    id: 'heats',
    asks: 'What heats?',
    trade: 'Heat sources',
    answers: (
      ['furnace', 'boiler', 'water-heater', 'fireplace', 'wood-stove', 'radiator', 'space-heater'] as const
    ).map(fixture),
  },
  {
    id: 'wet',
    asks: 'What is wet or open to the soil?',
    trade: 'Sump, drains, laundry, mitigation',
    answers: (['sump-pit', 'floor-drain', 'washer', 'dryer', 'mitigation-pipe'] as const).map(fixture),
  },
  {
    id: 'stands',
    asks: 'What stands here?',
    trade: 'Furnishings',
    answers: OBJECT_PRESETS.map((preset) =>
      answer(OBJECT_DEFAULTS[preset].name, { kind: 'object', object: preset }, sizeWords(OBJECT_DEFAULTS[preset])),
    ),
  },
  {
    id: 'sit',
    asks: 'Where could it be placed?',
    trade: 'Detector location',
    answers: [
      answer('Detector', { kind: 'detector' }, (unit) => `${formatLength(USUAL_DETECTOR.radius * 2, unit)} across`),
    ],
  },
  // Last, because the place of a question in the list is the key that opens it. Nothing is drawn for this one.
  { id: 'sun', asks: 'Where does direct sun fall?', trade: 'Direct sunlight', answers: [] },
];

/** Returns the answer of the walk that chooses this tool; undefined for a tool that no question asks for. */
export function answerFor(tool: Tool): Answer | undefined {
  return QUESTIONS.flatMap(({ answers }) => answers).find((each) => sameTool(each.tool, tool));
}

/** Returns whether two tools place the same thing. */
export function sameTool(a: Tool, b: Tool): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}
