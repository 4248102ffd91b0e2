// The kinds of small faults that the mutation run plants, each as it slips into code and still reads well. What no test
// should hold is no kind: types, the text of errors, names.

/** Gives each its opposite, both ways. */
const pairs = (entries) =>
  Object.fromEntries(
    entries.flatMap(([one, other]) => [
      [one, other],
      [other, one],
    ]),
  );

const EDGES = pairs([
  ['<', '<='],
  ['>', '>='],
]);
const EQUALS = pairs([['===', '!==']]);
const LOGIC = pairs([['&&', '||']]);
const ARITHMETIC = {
  ...pairs([
    ['+', '-'],
    ['*', '/'],
    ['+=', '-='],
  ]),
  '%': '*',
};
const LEAST_MOST = pairs([['min', 'max']]);
const ROUNDING = { floor: 'ceil', ceil: 'floor', round: 'floor', trunc: 'ceil' };
const SIDES = pairs([
  ['find', 'findLast'],
  ['findIndex', 'findLastIndex'],
  ['indexOf', 'lastIndexOf'],
  ['startsWith', 'endsWith'],
]);
const HOW_MANY = pairs([['some', 'every']]);
const SORTING = new Set(['sort', 'toSorted']);
const STEPS = new Set([
  'filter',
  'slice',
  'reverse',
  'toReversed',
  'toSorted',
  'toLowerCase',
  'toUpperCase',
  'trim',
]);

const OPERATIONS = new Set(['BinaryExpression', 'LogicalExpression', 'AssignmentExpression']);
const isText = (node) => node.type === 'TemplateLiteral' || typeof node.value === 'string';
const isLeaving = (node) =>
  node.type === 'BlockStatement'
    ? node.body.length === 1 && isLeaving(node.body[0])
    : /^(Return|Continue|Break)S/.test(node.type);

/** The name of the method a call asks for, where it stands. */
const methodOf = (node) =>
  node.type === 'CallExpression' && node.callee.type === 'MemberExpression' && !node.callee.computed
    ? node.callee.property
    : undefined;

/** A kind that puts another operator between two operands. */
const operator = (swaps) => (node, text) => {
  if (!OPERATIONS.has(node.type) || !Object.hasOwn(swaps, node.operator)) return;
  if (node.operator.startsWith('+') && (isText(node.left) || isText(node.right))) return;
  const start = text.indexOf(node.operator, node.left.end);
  return [start, start + node.operator.length, swaps[node.operator]];
};

/** A kind that calls another method. */
const method = (swaps) => (node) => {
  const name = methodOf(node);
  return name && Object.hasOwn(swaps, name.name) ? [name.start, name.end, swaps[name.name]] : undefined;
};

/** Every kind: from a node and the text of its file to where it lies and what stands there then, or to nothing. */
export const KINDS = {
  'edge of a comparison': operator(EDGES),
  'equal for not equal': operator(EQUALS),
  'and for or': operator(LOGIC),
  'other arithmetic': operator(ARITHMETIC),
  'least for most': method(LEAST_MOST),
  'rounded otherwise': method(ROUNDING),
  'first for last': method(SIDES),
  'some for every': method(HOW_MANY),
  'fallback left out': (node) => (node.operator === '??' ? [node.left.end, node.right.end, ''] : undefined),
  'number one off': (node) =>
    node.type === 'Literal' && typeof node.value === 'number' && node.value + 1 !== node.value
      ? [node.start, node.end, String(node.value + 1)]
      : undefined,
  'true for false': (node) =>
    typeof node.value === 'boolean' && node.type === 'Literal'
      ? [node.start, node.end, String(!node.value)]
      : undefined,
  'element left out': (node) => {
    if (node.type !== 'ArrayExpression' || node.elements.length < 3) return;
    const at = (node.end - node.start) % node.elements.length; // any of them, and the same one wherever the list moves
    const [one, next] = [node.elements[at], node.elements[at + 1]];
    return [one.start, next ? next.start : one.end, ''];
  },
  'order reversed': (node, text) => {
    if (!SORTING.has(methodOf(node)?.name) || node.arguments.length !== 1) return;
    const [{ start, end }] = node.arguments;
    return [start, end, `(one, other) => (${text.slice(start, end)})(other, one)`];
  },
  'step left out': (node) =>
    STEPS.has(methodOf(node)?.name) ? [node.callee.object.end, node.end, ''] : undefined,
  'early return left out': (node) =>
    node.type === 'IfStatement' && !node.alternate && isLeaving(node.consequent)
      ? [node.start, node.end, ';']
      : undefined,
  'call left out': (node) =>
    node.type === 'ExpressionStatement' && /^(Call|Await)/.test(node.expression.type)
      ? [node.start, node.end, ';']
      : undefined,
  'not left out': (node) =>
    node.type === 'UnaryExpression' && node.operator === '!' ? [node.start, node.start + 1, ''] : undefined,
  'condition negated': (node, text) => {
    if (node.type !== 'IfStatement' && node.type !== 'ConditionalExpression') return;
    const { start, end, type, operator: between } = node.test;
    if (type === 'UnaryExpression' || Object.hasOwn(EQUALS, between)) return; // another kind does the same
    return [start, end, `!(${text.slice(start, end)})`];
  },
};
