import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { modesAt } from '../../../src/commands/modes.ts';
import { usePanels } from '../../../src/commands/panels.ts';
import { useLengths } from '../../../src/editor/lengths/store.ts';
import { SHEET_ID } from '../../../src/editor/open-menu.ts';
import { useAppStore } from '../../../src/state/store.ts';

/** As much of an element as tells what a key press there is for. */
class FakeElement extends EventTarget {
  readonly id: string;
  readonly isField: boolean;
  constructor(id: string, isField = false) {
    super();
    this.id = id;
    this.isField = isField;
  }
  closest(): FakeElement | null {
    return this.isField ? this : null;
  }
}

const body = new FakeElement('');
const sheet = new FakeElement(SHEET_ID);
const button = new FakeElement('some-button');
const field = new FakeElement('some-field', true);
let openDialog: FakeElement | null = null;

beforeEach(() => {
  vi.stubGlobal('Element', FakeElement);
  vi.stubGlobal('HTMLElement', FakeElement);
  vi.stubGlobal('document', { body, querySelector: () => openDialog });
});
afterEach(() => {
  vi.unstubAllGlobals();
  openDialog = null;
  useAppStore.getState().closeMenu();
  usePanels.setState({ dialog: null });
  useLengths.setState({ open: null });
  useAppStore.getState().setTracingFrameOpen(false);
  useAppStore.getState().newPlan();
});

describe('modesAt(target)', () => {
  it.each([
    { name: 'the sheet', target: sheet, modes: ['sheet', 'page'] },
    { name: 'nothing in particular', target: body, modes: ['sheet', 'page'] },
    { name: 'a button: arrows and Enter are its own', target: button, modes: ['page'] },
    { name: 'a field', target: field, modes: ['field'] },
  ])('with the focus on $name', ({ target, modes }) => {
    expect(modesAt(target)).toEqual(modes);
  });

  it('with another tool, while walls are drawn, and while something is dragged: the innermost first', () => {
    const { setTool, setChain, setPreviewPlan, plan } = useAppStore.getState();
    setTool({ kind: 'wall' });
    expect(modesAt(sheet)).toEqual(['tool', 'sheet', 'page']);
    setChain({ corners: [[0, 0]], takenBack: [] });
    expect(modesAt(sheet)).toEqual(['drawing', 'tool', 'sheet', 'page']);
    setPreviewPlan(plan);
    expect(modesAt(button)).toEqual(['drawing', 'tool', 'gesture', 'page']);
    expect(modesAt(field)).toEqual(['field']);
  });

  it('with a length that waits, or whose field is not there yet, until the field has the keys', () => {
    const subject = { of: 'gap', id: 'd1', axis: 0 } as const;
    const open = { subject, typing: false, first: null, moves: null, run: [], at: 0, asked: 1 };
    useLengths.setState({ open });
    expect(modesAt(sheet)).toEqual(['length', 'sheet', 'page']);
    useLengths.setState({ open: { ...open, typing: true } });
    expect(modesAt(sheet)).toEqual(['length', 'sheet', 'page']);
    expect(modesAt(field)).toEqual(['field']);
  });

  it('with the frame of the picture, which Escape closes from a field too', () => {
    useAppStore.getState().setTracingFrameOpen(true);
    expect(modesAt(sheet)).toEqual(['tracing-frame', 'sheet', 'page']);
    expect(modesAt(field)).toEqual(['tracing-frame', 'field']);
  });

  it('with the menu open, and with a dialog that is open or on its way: nothing of the page', () => {
    useAppStore.getState().openMenu({ page: [0, 0], at: null, ids: [], byTouch: false });
    expect(modesAt(sheet)).toEqual(['menu']);
    usePanels.setState({ dialog: { kind: 'keys' } });
    expect(modesAt(sheet)).toEqual(['dialog']);
    usePanels.setState({ dialog: null });
    openDialog = new FakeElement('');
    expect(modesAt(field)).toEqual(['dialog']);
  });
});
