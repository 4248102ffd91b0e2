// Makes the first script of the build a plain one. Chromium compiles a plain script whole when the worker keeps it, and
// never a module: a module is compiled again, function by function, at every start without signal.
import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { minify } from 'terser';
import { parseAst } from 'vite';

/** Where the script leaves what the parts that come later ask it for. */
const SHELF = 'globalThis.rollbookFirst';

const nameIn = ({ type, name, value }) => (type === 'Literal' ? JSON.stringify(value) : name);

/** The places of `import.meta`, which a plain script does not have. */
function metaPlaces(node) {
  if (node === null || typeof node !== 'object') return [];
  if (node.type === 'MetaProperty') return [node];
  return Object.values(node).flatMap(metaPlaces);
}

/**
 * The code of a module as a plain script that runs the same, and as a module that gives the same exports once the
 * script has run. Throws for a module that imports, or exports otherwise than by a list of its own names. An export that
 * is written to later would be seen as it first was: a chunk of functions, classes and constants has none.
 */
export function asPlainScript(code) {
  const tree = parseAst(code);
  const outward = tree.body.filter(({ type }) => /^(Import|Export)/.test(type));
  const [list] = outward;
  if (outward.length !== 1 || list.type !== 'ExportNamedDeclaration' || list.declaration || list.source)
    throw new Error('The first script must import nothing, and export one list of its own names');
  const cuts = [
    ...metaPlaces(tree).map(({ start, end }) => [start, end, 'meta']),
    [list.start, list.end, ''],
  ];
  let body = code;
  for (const [start, end, instead] of cuts.toSorted(([a], [b]) => b - a))
    body = body.slice(0, start) + instead + body.slice(end);
  const locals = list.specifiers.map(({ local }) => nameIn(local));
  const taken = list.specifiers.map(({ exported }, at) => `g${at} as ${nameIn(exported)}`);
  return {
    script: `(()=>{"use strict";let meta={url:document.currentScript.src};${body}${SHELF}=[${locals}]})();\n`,
    module: `const[${locals.map((_, at) => `g${at}`)}]=${SHELF};export{${taken}};\n`,
  };
}

/** Shorter than the bundler leaves it, by a sixtieth: the first load is counted in bytes. */
async function shortened(code) {
  const { code: short } = await minify(code, { ecma: 2020, compress: { passes: 2 } });
  return short;
}

/** In a folder that was built: the module that the page names becomes a plain script, and a module that gives its exports. */
export async function makeFirstScriptPlain(folder) {
  const at = (name) => join(folder, name);
  const page = readFileSync(at('index.html'), 'utf8');
  const [tag, name] = /<script type="module"[^>]*? src="\/([^"]+)"><\/script>/.exec(page) ?? [];
  if (!tag) throw new Error('The built page has no script');
  const { script: long, module } = asPlainScript(readFileSync(at(name), 'utf8'));
  const script = await shortened(long);
  const plain = `assets/first-${createHash('sha256').update(script).digest('hex').slice(0, 8)}.js`;
  writeFileSync(at(plain), script);
  writeFileSync(at(name), module);
  writeFileSync(at('index.html'), page.replace(tag, `<script defer src="/${plain}"></script>`));
  writeFileSync(at('first-look.js'), await shortened(readFileSync(at('first-look.js'), 'utf8')));
  const packages = JSON.parse(readFileSync(at('.packages.json'), 'utf8'));
  writeFileSync(at('.packages.json'), JSON.stringify({ ...packages, [plain]: packages[name], [name]: [] }));
}
