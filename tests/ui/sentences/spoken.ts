import type { Node } from './syntax.ts';

/** What stands inside a line of text without breaking it. */
const INLINE = new Set(['strong', 'b', 'em', 'span', 'small', 'a', 'code', 'bdi']);

const ENTITIES: Record<string, string> = { amp: '&', nbsp: ' ', lt: '<', gt: '>', quot: '"', apos: "'" };

export const isInline = (node: Node | undefined): boolean =>
  node?.type === 'JSXElement' && INLINE.has(nameOf(node.openingElement.name));

/** The text of an element as one line; elements side by side with nothing between are lines of their own. */
export function lineOf(children: readonly Node[]): string {
  return children
    .map((child, at) => {
      if (child.type === 'JSXText')
        return `${isInline(children[at - 1]) && /^\p{L}/u.test(textOf(child)) ? '\n' : ''}${textOf(child)}`;
      if (child.type === 'JSXExpressionContainer')
        return isSpoken(child.expression) ? spoken(child.expression) : '\n';
      if (!isInline(child)) return '\n';
      const before = children[at - 1];
      const isJoined = !before || (before.type === 'JSXText' ? textOf(before) !== '' : !isInline(before));
      return `${isJoined ? '' : '\n'}${lineOf(child.children)}`;
    })
    .join('');
}

/** Text as it reads: what is filled in as `{name}`, choices as `[one / other]`. */
export function spoken(node: Node): string {
  switch (node.type) {
    case 'Literal':
      return typeof node.value === 'string' ? node.value : '';
    case 'TemplateLiteral':
      return (node.quasis as Node[])
        .map((quasi, at) => quasi.value.cooked + (node.expressions[at] ? spoken(node.expressions[at]) : ''))
        .join('');
    case 'ConditionalExpression':
      return `[${spoken(node.consequent)} / ${spoken(node.alternate)}]`;
    case 'LogicalExpression':
      return node.operator === '&&' ? `[${spoken(node.right)}]` : filled(node);
    case 'JSXEmptyExpression':
      return '';
    case 'TSAsExpression':
      return spoken(node.expression);
    default:
      return filled(node);
  }
}

/** Whether an expression is text or a value, so that it can be part of a line. */
export function isSpoken(node: Node): boolean {
  switch (node.type) {
    case 'ConditionalExpression':
      return isSpoken(node.consequent) && isSpoken(node.alternate);
    case 'LogicalExpression':
      return isSpoken(node.right);
    case 'CallExpression':
      return !(node.arguments as Node[]).some(({ type }) => type === 'ArrowFunctionExpression');
    default:
      return /^(Literal|TemplateLiteral|Identifier|MemberExpression|JSXEmptyExpression|BinaryExpression)$/.test(
        node.type,
      );
  }
}

/** What is filled in, by the last name in it; a count with its word in both numbers. */
function filled(node: Node): string {
  if (node.type === 'CallExpression' && /^(countOf|counted)$/.test(nameOf(node.callee))) {
    const [, one, many] = (node.arguments as Node[]).map(spoken);
    return `{count} ${one}${many ? `/${many}` : '(s)'}`;
  }
  return `{${lastName(node) || '…'}}`;
}

function lastName(node: Node): string {
  switch (node.type) {
    case 'CallExpression': {
      const given = (node.arguments as Node[]).map(lastName).filter((name) => /^[a-z]/i.test(name));
      return given.at(-1) ?? (lastName(node.callee) || nameOf(node.callee));
    }
    case 'MemberExpression': {
      const name = nameOf(node.property);
      const isOfMany = /^(length|size|map|filter|join|trim|toFixed|to\w+|value|\d+)$/.test(name);
      return isOfMany ? lastName(node.object) : name;
    }
    case 'LogicalExpression':
    case 'BinaryExpression':
      return lastName(node.left) || lastName(node.right);
    case 'TSNonNullExpression':
    case 'TSAsExpression':
    case 'ChainExpression':
      return lastName(node.expression);
    case 'Literal':
      return '';
    default:
      return nameOf(node);
  }
}

export function nameOf(node: Node): string {
  if (node.type === 'MemberExpression') return nameOf(node.property);
  if (node.type === 'JSXNamespacedName') return `${node.namespace.name}:${node.name.name}`;
  if (node.type === 'Literal') return String(node.value);
  return typeof node.name === 'string' ? node.name : '';
}

/** As JSX reads it: a line break is nothing at an edge, and a space between words. */
const textOf = (node: Node): string =>
  (node.value as string)
    .replace(/^\s*\n\s*|\s*\n\s*$/g, '')
    .replace(/\s*\n\s*/g, ' ')
    .replace(/&(\w+);/g, (whole, entity: string) => ENTITIES[entity] ?? whole);
