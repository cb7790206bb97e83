import { parseSync } from 'vite';

/** A node of the syntax tree, as far as it is needed here. */
export interface Node {
  readonly type: string;
  readonly start: number;
  readonly end: number;
  readonly [key: string]: unknown;
}

/** One change of a source text. */
export interface Change {
  readonly start: number;
  readonly end: number;
  /** The replacement text. */
  readonly text: string;
  /** Whether a whole statement or an expression is replaced. */
  readonly of: 'expression' | 'statement';
}

const BINARY: Readonly<Record<string, readonly string[]>> = {
  '<': ['<=', '>='],
  '<=': ['<', '>'],
  '>': ['>=', '<='],
  '>=': ['>', '<'],
  '===': ['!=='],
  '!==': ['==='],
  '+': ['-'],
  '-': ['+'],
  '*': ['/'],
  '/': ['*'],
  '&&': ['||'],
  '||': ['&&'],
  '??': ['&&'],
};
const CALLS: Readonly<Record<string, string>> = { some: 'every', every: 'some', min: 'max', max: 'min' };
/** Calls that are removed; the object that they are called on stays. */
const LEFT_OUT = new Set(['filter', 'sort', 'slice', 'reverse']);

const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && typeof (value as Node).type === 'string';

/** Types have no effect at run time; an expression within a type assertion has. */
export const isTypeOnly = ({ type }: Node): boolean =>
  type.startsWith('TS') && !['TSAsExpression', 'TSSatisfiesExpression', 'TSNonNullExpression'].includes(type);

/** Returns the syntax tree of a TypeScript module. */
export function treeOf(code: string): Node {
  return parseSync('module.ts', code, { lang: 'ts' }).program as unknown as Node;
}

/** Returns the child nodes, each with its key. */
export function childrenOf(node: Node): readonly (readonly [key: string, child: Node])[] {
  return Object.entries(node).flatMap(([key, value]) =>
    (Array.isArray(value) ? value : [value]).filter(isNode).map((child) => [key, child] as const),
  );
}

/** Whether a node is a call of `assert`, which does nothing if it holds. */
export const isAssertion = ({ type, callee }: Node): boolean =>
  type === 'CallExpression' && (callee as { readonly name?: string }).name === 'assert';

/** Returns every change of one node that a test should notice. `key`: its key in the parent. */
export function changesOf(node: Node, key: string, parent: Node | null, code: string): readonly Change[] {
  const text = ({ start, end }: Node) => code.slice(start, end);
  const whole = (by: string, of: Change['of'] = 'expression'): Change => ({
    start: node.start,
    end: node.end,
    text: by,
    of,
  });
  switch (node.type) {
    case 'BinaryExpression':
    case 'LogicalExpression': {
      const [left, right] = [node.left as Node, node.right as Node];
      return (BINARY[node.operator as string] ?? []).map((operator) =>
        whole(`(${text(left)}) ${operator} (${text(right)})`),
      );
    }
    case 'UnaryExpression':
      return node.operator === '!' || node.operator === '-' ? [whole(text(node.argument as Node))] : [];
    case 'ConditionalExpression':
      return [whole(`(${text(node.consequent as Node)})`), whole(`(${text(node.alternate as Node)})`)];
    case 'Literal':
      return literalChanges(node, key, parent, whole);
    case 'CallExpression':
      return callChanges(node, text, whole);
    case 'IfStatement':
      return isNode(node.alternate) ? [] : [whole('{}', 'statement')];
    case 'ExpressionStatement':
      return isAssertion(node.expression as Node) ? [] : [whole('{}', 'statement')];
    default:
      return [];
  }
}

function literalChanges(
  { value }: Node,
  key: string,
  parent: Node | null,
  whole: (by: string) => Change,
): readonly Change[] {
  if (key === 'key' || key === 'source' || parent?.type.startsWith('TS')) return [];
  if (typeof value === 'boolean') return [whole(String(!value))];
  if (typeof value === 'number') return [whole(`${value + 1}`)];
  return typeof value === 'string' ? [whole(value === '' ? "'another'" : "''")] : [];
}

function callChanges(
  { callee, optional }: Node,
  text: (node: Node) => string,
  whole: (by: string) => Change,
): readonly Change[] {
  if (optional || !isNode(callee) || callee.type !== 'MemberExpression' || callee.computed || callee.optional)
    return [];
  const { name } = callee.property as Node & { name: string };
  const object = callee.object as Node;
  if (LEFT_OUT.has(name)) return [whole(text(object))];
  const other = CALLS[name];
  if (!other) return [];
  return [{ ...whole(''), start: object.end, end: callee.end, text: `.${other}` }];
}
