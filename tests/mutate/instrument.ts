import { type Change, changesOf, childrenOf, isAssertion, isTypeOnly, type Node, treeOf } from './operators.ts';

/** A change of one file with its number. */
export interface Mutant extends Change {
  readonly id: number;
  readonly file: string;
  readonly line: number;
  /** The original code, on one line. */
  readonly before: string;
  /** The whole line, which identifies a survivor, because line numbers change. */
  readonly context: string;
}

/** Returns every mutant of a file, in the order of its text, numbered from `first`. */
export function mutantsOf(file: string, code: string, first: number): readonly Mutant[] {
  const found: Change[] = [];
  const visit = (node: Node, key: string, parent: Node | null): void => {
    if (isTypeOnly(node) || node.type === 'ImportDeclaration' || isAssertion(node)) return;
    found.push(...changesOf(node, key, parent, code));
    for (const [name, child] of childrenOf(node)) if (!isInChain(node, name)) visit(child, name, node);
  };
  visit(treeOf(code), '', null);
  return found.map((change, index) => {
    const before = code.slice(0, change.start);
    const line = before.split('\n').length;
    return {
      ...change,
      id: first + index,
      file,
      line,
      before: oneLine(code.slice(change.start, change.end)),
      context: (code.split('\n')[line - 1] ?? '').trim(),
    };
  });
}

/** Keys of members and type arguments have no value, so they are not mutated. */
const isInChain = (node: Node, key: string): boolean =>
  key === 'typeArguments' ||
  key === 'typeAnnotation' ||
  key === 'returnType' ||
  (key === 'property' && node.type === 'MemberExpression' && node.computed !== true);

const oneLine = (text: string): string => text.replace(/\s+/g, ' ').trim();

/** Returns the code with these mutants, each switched on by `isMutant(id)`. */
export function instrumented(code: string, mutants: readonly Mutant[]): string {
  const wide = [...mutants].sort((a, b) => a.start - b.start || b.end - a.end);
  const render = (start: number, end: number, inside: readonly Mutant[]): string => {
    let text = '';
    let at = start;
    for (let i = 0; i < inside.length; ) {
      const head = inside[i] as Mutant;
      const same = inside.filter((one) => one.start === head.start && one.end === head.end);
      const nested = inside.filter((one) => !same.includes(one) && one.start >= head.start && one.end <= head.end);
      text += code.slice(at, head.start) + switched(same, render(head.start, head.end, nested));
      at = head.end;
      i = inside.findIndex((one) => one.start >= at);
      if (i < 0) break;
    }
    return text + code.slice(at, end);
  };
  return render(0, code.length, wide);
}

function switched(mutants: readonly Mutant[], original: string): string {
  if (mutants[0]?.of === 'statement')
    return mutants.reduce((rest, { id, text }) => `if (isMutant(${id})) ${text} else { ${rest} }`, original);
  // A member such as `.max` is chosen by name, between the object and its arguments.
  if (original.startsWith('.'))
    return mutants.reduce(
      (rest, { id, text }) => `[isMutant(${id}) ? '${text.slice(1)}' : '${rest.slice(1)}']`,
      original,
    );
  return mutants.reduce((rest, { id, text }) => `(isMutant(${id}) ? (${text}) : (${rest}))`, original);
}
