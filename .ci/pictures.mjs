// Takes pictures of the running app: `npm run pictures`, or `npm run pictures -- radio` for the places with that in
// their name only. Those of README go into tests/pictures, those of every place into a folder that git ignores.
import { runnerImport } from 'vite';
import { ensureBuilt } from './build.mjs';

const EVERY_PLACE = '.shots/places';
const README = 'tests/pictures';

const load = async (path) =>
  (await runnerImport(new URL(`../tests/pictures/${path}`, import.meta.url).pathname)).module;
const { takeEveryPlace } = await load('every-place.ts');
const { takeReadmePictures } = await load('readme-pictures.ts');

ensureBuilt();
const filter = process.argv.slice(2).join(' ');
const places = await takeEveryPlace(EVERY_PLACE, filter);
for (const place of places) console.log(place);
console.log(`${places.length} places at four sizes in four looks, and a sheet of each: ${EVERY_PLACE}`);
if (!filter) console.log(`${await takeReadmePictures(README)} pictures of README: ${README}`);
process.exit(places.length > 0 ? 0 : 1);
