import '../../helpers/fake-store.ts';
import { afterEach, expect, it } from 'vitest';
import { importPlans } from '../../../src/commands/import-plans.ts';
import { useAppStore } from '../../../src/state/store.ts';
import { writeLibraryFile } from '../../../src/storage/library/library-file.ts';
import { useLibrary } from '../../../src/storage/library-state.ts';
import { sampleText } from '../../helpers/sample-files.ts';

const stops: (() => void)[] = [];
afterEach(() => {
  for (const stop of stops.splice(0)) stop();
});

it('says that a file of plans is read before it is, and what came of it after', async () => {
  const said: string[] = [];
  const heard: string[] = [];
  stops.push(useAppStore.subscribe(({ message }, before) => void (message !== before.message && said.push(message))));
  stops.push(
    useLibrary.subscribe(({ message }, before) => void (message !== before.message && heard.push(message.text))),
  );
  const plan = {
    id: 'p',
    createdAt: 1,
    changedAt: 1,
    binnedAt: null,
    versions: [],
    text: sampleText('01-plain-basement'),
  };
  const file = new File([writeLibraryFile([plan], 1)], 'all.plans.json');
  await importPlans([file], () => undefined);
  expect(said).toEqual(['Reading all.plans.json…', '']);
  expect(heard).toEqual(['Reading all.plans.json…', 'all.plans.json: 1 new.']);
});
