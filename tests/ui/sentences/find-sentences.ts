import { parseSync } from 'vite';
import { isInline, isSpoken, lineOf, nameOf, spoken } from './spoken.ts';
import { isNode, type Node } from './syntax.ts';

/** Attributes and properties whose text is read or heard, even if it is one small word. */
const READ =
  /^(label|title|under|word|name|hint|placeholder|question|anyway|legend|means|none|about|note|aria-(label|description|roledescription|valuetext))$/;

/** Attributes whose text is never read. */
const UNREAD_ATTRIBUTES =
  /^(class|style|d|key|id|for|type|role|href|accept|capitals|inputMode|look|mark|rel|target|tab|at|fill|stroke.*|viewBox|transform|x\d?|y\d?|width|height|data-.*|aria-(labelledby|live|hidden|controls|describedby))$/;

/** Properties that hold names of the code, and what is made of them. */
const UNREAD_PROPERTIES =
  /^(kind|code|type|id|part|class|look|use|role|state|mark|tab|at|store|type|how|what)$/;

/** Fields of the tree with types and names in them, which nobody reads. */
const UNREAD_FIELDS = new Set(['typeAnnotation', 'returnType', 'typeArguments', 'typeParameters', 'key']);
const UNREAD_NODES = /^(TS(Type|Interface|Enum)|Import|ExportAll|JSXClosing)/;

/** Calls that show nothing of what they are given. */
const UNREAD_CALLS =
  /^(join|split|includes|startsWith|endsWith|indexOf|lazy|\w*querySelector\w*|closest|matches|getElementById|\w+EventListener|(get|set)Item|matchMedia|wordOf|setAttribute|createElement|Error|RegExp|Worker|URL|replace\w*|pad\w+|has|get|set|observe|toggle|test|openSection|postMessage|toLocaleString|Intl|goTo)$/;

/** Calls that show what they are given, also single words. */
const SHOWING_CALLS = /^(tell|complain|run|countOf|does|plain|listOf|onDone)$/;

/** Tables and functions that hold words for the screen. */
const HOLDS_WORDS =
  /WORD|NAME|TITLE|LABEL|MEANS|SENTENCES|FIGURES|FIELDS|TAPPED|YES_NO|COMPLAINTS|Words?$|Title$|Text$/;

/** Every text that one file can show, in its order and as it would be read. */
export function sentencesIn(name: string, code: string): string[] {
  const found: string[] = [];
  walk(parseSync(name, code).program as unknown as Node, found, false);
  return found
    .flatMap((text) => text.split('\n'))
    .map((text) => text.replace(/\s+/g, ' ').trim())
    .filter((text) => /\p{L}{2}/u.test(text.replace(/\{[^}]*\}/g, '')));
}

/** Takes a whole text where one begins, and looks further inside everything else. */
function walk(node: Node, found: string[], isShown: boolean): void {
  if (UNREAD_NODES.test(node.type)) return;
  const inside = WALKS[node.type] ?? walkInside;
  inside(node, found, isShown);
}

type Walk = (node: Node, found: string[], isShown: boolean) => void;

/** What is walked in its own way; everything else is only looked into. */
const WALKS: Readonly<Record<string, Walk>> = {
  Literal: take,
  TemplateLiteral: take,
  // Sides of a comparison.
  BinaryExpression: () => {},
  JSXElement: walkElement,
  JSXFragment: walkElement,
  CallExpression: walkCall,
  NewExpression: walkCall,
  MemberExpression: (node, found) => walk(node.object, found, false),
  SwitchCase: (node, found, isShown) => {
    for (const one of node.consequent as Node[]) walk(one, found, isShown);
  },
  Property: walkProperty,
  VariableDeclarator: walkNamed,
  FunctionDeclaration: walkNamed,
};

function walkNamed(node: Node, found: string[], isShown: boolean): void {
  walkInside(node, found, isShown || HOLDS_WORDS.test(nameOf(node.id)));
}

function walkInside(node: Node, found: string[], isShown: boolean): void {
  for (const [field, value] of Object.entries(node)) {
    if (UNREAD_FIELDS.has(field)) continue;
    for (const one of Array.isArray(value) ? value : [value]) if (isNode(one)) walk(one, found, isShown);
  }
}

function walkProperty(node: Node, found: string[], isShown: boolean): void {
  const name = nameOf(node.key);
  if (!UNREAD_PROPERTIES.test(name) || isShown) walk(node.value, found, isShown || READ.test(name));
}

function walkCall(node: Node, found: string[]): void {
  const callee = nameOf(node.callee);
  walk(node.callee, found, false);
  if (UNREAD_CALLS.test(callee)) return;
  for (const one of node.arguments as Node[]) walk(one, found, SHOWING_CALLS.test(callee));
}

/** What an element's attributes say, then its own line, then what stands inside apart from that line. */
function walkElement(node: Node, found: string[]): void {
  for (const { type, name, value } of node.openingElement?.attributes ?? []) {
    if (type !== 'JSXAttribute' || !value || UNREAD_ATTRIBUTES.test(nameOf(name))) continue;
    walk(value, found, READ.test(nameOf(name)));
  }
  found.push(lineOf(node.children));
  for (const child of apartFrom(node.children)) walk(child, found, true);
}

/** Blocks, and what is chosen or repeated: not part of the line of the element they are in. */
function apartFrom(children: readonly Node[]): Node[] {
  return children.flatMap((child) => {
    if (child.type === 'JSXText') return [];
    if (isInline(child)) return apartFrom(child.children);
    if (child.type !== 'JSXExpressionContainer') return [child];
    return isSpoken(child.expression) ? [] : [child.expression];
  });
}

function take(node: Node, found: string[], isShown: boolean): void {
  const text = spoken(node);
  if (!DRAWN.test(text) && (isShown ? !/^[a-z]+[A-Z]/.test(text) : !isCode(text))) found.push(text);
}

/** Paths, turns and letters of drawings, selectors and classes of styles. */
const DRAWN = /^(\d+ \{\w+\}px|rotate\(|[Ml](\d|\{)|button |input:)/;

/** With no space in it, a text is a name of the code, unless it is written as words are. */
const isCode = (text: string): boolean => !/\s/.test(text.trim()) && !/^[A-Z][a-z]+[.…]?$/.test(text);
