/** The phone's database, as whoever opens it must know it: the journal, and the worker that keeps its copy. */
export const DATABASE = 'rollbook';

/** Every fact of a day, under its keys `[day, id]`. */
export const dayRange = (day: string): IDBKeyRange => IDBKeyRange.bound([day], [day, []]);

/** The key, in `meta`, of a word made whenever the database is: another word means that it was emptied in between. */
export const FILLING = 'filling';
