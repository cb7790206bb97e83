import { rulesOf } from '../../advice/walk-round.ts';
import { pickUse } from '../../commands/go-to.ts';
import { openQuestion, usePanels } from '../../commands/panels.ts';
import { digitsOf } from '../../commands/question-commands.ts';
import { useLengths } from '../../editor/lengths/store.ts';
import { type Answer, likeWords, type Question, sameTool } from '../../state/questions.ts';
import { useAppStore } from '../../state/store.ts';
import { SELECT_TOOL } from '../../state/tool.ts';
import { preloaded } from '../hooks/later.tsx';
import { useLevel } from '../hooks/use-level.ts';
import { QuestionState } from './question-state.tsx';
import './palette.css';

// Part of the first picture: it stands in the question that is open, and later would push the others down.
const WallSettingsFields = preloaded(() =>
  import('./wall-settings-fields.tsx').then((part) => part.WallSettingsFields),
);
// A press in the verdict leads to it.
const NoneHere = preloaded(() => import('./none-here.tsx').then((part) => part.NoneHere));

interface Props {
  readonly questions: readonly Question[];
  /** Shows the answers at once, for a list of one question. */
  readonly alwaysOpen?: boolean;
}

/** The tester's questions of the walk round; each opens the tools that answer it. */
export function Palette({ questions, alwaysOpen = false }: Props) {
  const open = usePanels((ui) => ui.question);
  return (
    <ul className="palette">
      {questions.map((question) => (
        <QuestionItem
          key={question.id}
          question={question}
          open={alwaysOpen || open === question.id}
          fixed={alwaysOpen}
        />
      ))}
    </ul>
  );
}

function QuestionItem({
  question,
  open,
  fixed,
}: {
  readonly question: Question;
  readonly open: boolean;
  readonly fixed: boolean;
}) {
  const { id, asks, trade, answers } = question;
  return (
    <li className="question" data-open={open || undefined}>
      <h3>
        {fixed ? (
          <span className="question__button">
            {asks} <span className="question__trade">{trade}</span>
          </span>
        ) : (
          <button
            type="button"
            id={`question-${id}`}
            className="question__button"
            aria-expanded={open}
            aria-labelledby={`question-${id}-asks`}
            aria-describedby={`question-${id}-trade question-${id}-state`}
            onClick={() => openQuestion(open ? null : id)}
          >
            <span id={`question-${id}-asks`}>{asks}</span> <QuestionState id={id} />
            <span className="question__trade" id={`question-${id}-trade`}>
              {trade}
            </span>
          </button>
        )}
      </h3>
      {open && (
        <>
          {rulesOf(id).length > 0 && <NoneHere id={id} />}
          <ul className="answers">
            {answers.map((answer) => (
              <AnswerItem key={answer.name} answer={answer} />
            ))}
          </ul>
          {id === 'closes' && <WallSettingsFields />}
        </>
      )}
    </li>
  );
}

function AnswerItem({ answer }: { readonly answer: Answer }) {
  const unit = useAppStore((state) => state.plan.display.length);
  const isActive = useAppStore((state) => sameTool(state.tool, answer.tool));
  const level = useLevel();
  const { name, tool, group } = answer;
  // While a length waits, digits are typed into it, so no digits are shown.
  const isLengthAsked = useLengths(({ open }) => open !== null);
  const key = isLengthAsked ? '' : digitsOf(tool);
  /** A double press keeps the tool. */
  const take = (presses: number) => {
    const { setTool, setKeepTool } = useAppStore.getState();
    if (tool.kind === 'room') pickUse(tool.use);
    else if (presses > 1) {
      setTool(tool);
      setKeepTool(true);
    } else setTool(isActive ? SELECT_TOOL : tool);
  };
  return (
    <>
      {group && <li className="answers__group">{group}</li>}
      <li>
        <button type="button" className="answer" aria-pressed={isActive} onClick={(event) => take(event.detail)}>
          <span className="answer__name">{name}</span>
          <span className="answer__usual">{likeWords(level, answer, unit)}</span>
          {key && <kbd className="key">{key}</kbd>}
        </button>
      </li>
    </>
  );
}
