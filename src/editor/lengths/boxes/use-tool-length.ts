import { useState } from 'react';
import type { ToolController } from '../../tools/tool-controller.ts';

/** The text of a length that the tool asks for. */
export interface ToolLength {
  readonly text: string;
  /** Why the tool did not take it, in words; empty while it has not refused it. */
  readonly refusal: string;
  readonly setText: (text: string) => void;
  readonly clearRefusal: () => void;
  /** Gives the text to the tool. Returns whether it took it. */
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
