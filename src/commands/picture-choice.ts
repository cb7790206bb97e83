import { withoutTracings } from '../../geometry/edit/index.ts';
import type { Plan } from '../../geometry/plan/model.ts';
import { useAppStore } from '../state/store.ts';
import { type PictureChoice, type SavedPictures, showDialog, usePanels } from './panels.ts';

const imagesOf = ({ levels }: Plan): readonly string[] => levels.flatMap(({ tracing }) => tracing?.image ?? []);

/** Returns the stored answer if it was given for the pictures of this plan; else 'ask'. */
export function choiceFor(plan: Plan, { choice, images }: SavedPictures): PictureChoice {
  const now = imagesOf(plan);
  return now.length === images.length && now.every((image, index) => image === images[index]) ? choice : 'ask';
}

export function keepPictureChoice(plan: Plan, choice: PictureChoice): void {
  usePanels.setState({ savedPictures: { choice, images: imagesOf(plan) } });
}

/** Resolves to the plan with or without its pictures. Never resolves if the dialog is closed without an answer: nothing is saved then. */
export async function planToSave(): Promise<Plan> {
  const { plan } = useAppStore.getState();
  if (imagesOf(plan).length === 0) return plan;
  const known = choiceFor(plan, usePanels.getState().savedPictures);
  const choice = known === 'ask' ? await askAboutPictures(plan) : known;
  return choice === 'without' ? withoutTracings(plan) : plan;
}

function askAboutPictures(plan: Plan): Promise<PictureChoice> {
  return new Promise((answered) => {
    const take = (choice: PictureChoice) => {
      keepPictureChoice(plan, choice);
      showDialog(null);
      answered(choice);
    };
    showDialog({ kind: 'pictures', take });
  });
}

/** Returns the words about pictures for the message after saving; empty if the plan has none. */
export function pictureWords(saved: Plan): string {
  if (imagesOf(useAppStore.getState().plan).length === 0) return '';
  return imagesOf(saved).length > 0 ? ', with the picture' : ', without the picture';
}
