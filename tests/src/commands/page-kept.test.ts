import { readFileSync } from 'node:fs';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Plan } from '../../../geometry/plan/model.ts';
import { keepPage } from '../../../src/commands/page-kept.ts';
import { openStage, openVisit, showDialog, usePanels } from '../../../src/commands/panels.ts';
import { useAppStore } from '../../../src/state/store.ts';

const house = JSON.parse(readFileSync('samples/02-split-level.plan.json', 'utf8')) as Plan;
const [lowest = '', next = ''] = house.levels.map(({ id }) => id);
const state = () => useAppStore.getState();
const stage = () => usePanels.getState().stage;

/** What the tab keeps, and whether its storage is blocked. */
let kept: Map<string, string>;
let isBlocked: boolean;
const whereAllowed = <T>(value: T): T => {
  if (isBlocked) throw new Error('the storage is blocked');
  return value;
};

/** The page as it opens after a load: the plan is there, on its first level, and what the tab keeps is as it was. */
function load(plan = house): void {
  const asItWas = new Map(kept);
  state().openPlan(plan);
  usePanels.setState({ stage: 'draw', visitOpen: false, dialog: null });
  useAppStore.setState({ levelId: lowest });
  kept = asItWas;
}

const before = { stage: usePanels.getState().stage, visitOpen: usePanels.getState().visitOpen };
beforeEach(() => {
  kept = new Map();
  isBlocked = false;
  vi.stubGlobal('document', { activeElement: null });
  vi.stubGlobal('HTMLElement', class {});
  vi.stubGlobal('sessionStorage', {
    getItem: (key: string) => whereAllowed(kept.get(key) ?? null),
    setItem: (key: string, text: string) => whereAllowed(kept.set(key, text)),
  });
  load();
});
afterEach(() => {
  usePanels.setState(before);
  state().newPlan();
  vi.unstubAllGlobals();
});

describe('the page that was open in this tab', () => {
  it('opens again with its level', () => {
    keepPage(true);
    openStage('place');
    state().setLevel(next);
    load();
    keepPage(true);
    expect([stage(), state().levelId]).toEqual(['place', next]);
  });

  it('opens again in a visit', () => {
    keepPage(true);
    openVisit();
    load();
    keepPage(true);
    expect(usePanels.getState().visitOpen).toBe(true);
  });

  it('opens the quick card again, also over a plan that is not stored, and leaves it closed once it was closed', () => {
    keepPage(true);
    showDialog({ kind: 'quick-card' });
    for (const isSamePlan of [true, false]) {
      load();
      keepPage(isSamePlan);
      expect(usePanels.getState().dialog).toEqual({ kind: 'quick-card' });
    }
    showDialog(null);
    load();
    keepPage(true);
    expect(usePanels.getState().dialog).toBeNull();
  });

  it('stays closed with another plan, and where its level is gone the first one is shown', () => {
    keepPage(true);
    openStage('place');
    state().setLevel(next);
    load();
    keepPage(false);
    expect([stage(), state().levelId]).toEqual(['draw', lowest]);
    load({ ...house, levels: house.levels.filter(({ id }) => id === lowest) });
    keepPage(true);
    expect([stage(), state().levelId]).toEqual(['place', lowest]);
  });

  it.each(['', '{', '[]', 'null', '{"stage":"nowhere","visitOpen":1,"levelId":7}'])(
    'is the first one where %j is kept',
    (text) => {
      keepPage(true);
      openStage('place');
      const [key = ''] = kept.keys();
      load();
      kept.set(key, text);
      keepPage(true);
      expect([stage(), usePanels.getState().visitOpen, state().levelId]).toEqual(['draw', false, lowest]);
    },
  );

  it('is the first one where the storage of the tab is blocked', () => {
    isBlocked = true;
    keepPage(true);
    openStage('place');
    load();
    keepPage(true);
    expect([stage(), state().levelId]).toEqual(['draw', lowest]);
  });
});
