import { useState } from 'react';
import type { ToolController } from '../../tools/tool-controller.ts';

/** The typed text of a length that the active tool asks for. */
export interface ToolLength {
  readonly text: string;
  /** Why the tool refused the text, in words; empty if it has not. */
  readonly refusal: string;
  readonly setText: (text: string) => void;
  readonly clearRefusal: () => void;
  /** Gives the text to the tool. Returns whether the tool accepted it. */
  readonly apply: () => boolean;
}

export function useToolLength(controller: () => ToolController, first: string): ToolLength {
  const [text, setText] = useState(first);
  const [refusal, setRefusal] = useState('');
  const clearRefusal = () => setRefusal('');
  return {
    text,
    refusal,
    setText: (typed) => {
      setText(typed);
      clearRefusal();
    },
    clearRefusal,
    apply: () => {
      const trouble = controller().typedLength?.(text) ?? '';
      setRefusal(trouble);
      return trouble === '';
    },
  };
}
