import { useEffect, useRef, useState } from 'react';
import {
  capital,
  describeCollision,
  describeOpenRules,
  describeReport,
  headlineText,
} from '../../../geometry/messages/index.ts';
import { levelName } from '../../../geometry/messages/subject.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import { detectorPreview } from '../../editor/overlay/detector-preview.ts';
import { useSketch } from '../../editor/overlay/sketch.ts';
import type { AppState } from '../../state/app-state.ts';
import { selectLevel, selectShownPlan } from '../../state/selectors.ts';
import { shownReports } from '../../state/shown-results.ts';
import { useAppStore } from '../../state/store.ts';
import { selectWhyNotWords } from '../../state/why-not.ts';

/** Long enough that a drag across a zone is announced once, ms. */
const REST_MS = 500;

/**
 * Announces to a screen reader, once nothing changes for a moment: another level in view, a detector whose verdict has changed, the verdict of a dragged one
 * where it is now, and the lengths at the keyboard's cross.
 */
export function LiveRegion() {
  const [announced, setAnnounced] = useState('');
  const heard = useRef(new Map<string, string>());
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    let toolWordsBefore = '';
    let seen = selectLevel(useAppStore.getState()).id;
    // Verdicts that are there when the page opens have not changed.
    heard.current = changedVerdicts(heard.current).verdicts;
    const tell = () => {
      const { verdicts, lines } = changedVerdicts(heard.current);
      const now = toolWords();
      heard.current = verdicts;
      const level = selectLevel(useAppStore.getState());
      const turned = level.id === seen ? '' : `${levelName(level)} is in view.`;
      seen = level.id;
      const news = [turned, ...lines, now === toolWordsBefore ? '' : now].filter(Boolean);
      toolWordsBefore = now;
      if (news.length > 0) setAnnounced(news.join(' '));
    };
    const wait = () => {
      clearTimeout(timer);
      timer = setTimeout(tell, REST_MS);
    };
    const stops = [useAppStore.subscribe(wait), useSketch.subscribe(wait)];
    return () => {
      for (const stop of stops) stop();
      clearTimeout(timer);
    };
  }, []);
  return (
    <output className="unseen" aria-live="polite">
      {announced}
    </output>
  );
}

/** The verdicts of the level in view, and a sentence for each that was another one before. */
function changedVerdicts(before: ReadonlyMap<string, string>) {
  const state = useAppStore.getState();
  const plan = selectShownPlan(state);
  const level = selectLevel(state);
  const lines: string[] = [];
  const verdicts = new Map<string, string>();
  for (const report of shownReports(state)) {
    verdicts.set(report.id, headlineText(report));
    if (before.get(report.id) === headlineText(report)) continue;
    const label = level.detectors.find(({ id }) => id === report.id)?.label || 'Detector';
    lines.push(
      `${label}: ${headlineText(report)}. ${describeReport(report, plan, level)} ${describeOpenRules(report, plan)}`.trim(),
    );
  }
  return { verdicts, lines };
}

function whyNotWords(state: AppState, at: XY): string {
  const { head, lines } = selectWhyNotWords(state, at);
  return [head && `${head}.`, ...lines].filter(Boolean).join(' ');
}

/** The words of the note beside the pointer: about a detector that is placed, or lengths at the keyboard's cross. */
function toolWords(): string {
  const [state, sketch] = [useAppStore.getState(), useSketch.getState()];
  const preview = detectorPreview(state, sketch);
  if (!preview && state.tool.kind === 'ask' && state.hover) return whyNotWords(state, state.hover.at);
  if (!preview) return sketch.cross ? sketch.reading.join(', ') : '';
  const { detector, report } = preview;
  const level = selectLevel(state);
  const reason = `${describeReport(report, selectShownPlan(state), level)} ${describeCollision(level, detector, report)}`;
  return `Here: ${capital(headlineText(report))}. ${reason.trim()}`;
}
