/** The database's shape, shared by the journal and the worker that keeps its copy. */
export const DATABASE = 'rollbook';

export const dayRange = (day: string): IDBKeyRange => IDBKeyRange.bound([day], [day, []]);

/** The key in `meta` of an id created with the database: a new id means it was emptied in between. */
export const FILLING = 'filling';
