import type { Result } from '../../shared/result.ts';

/**
 * Why a sealed batch is not taken. Anybody may put anything into a log or a file, so none of it is said by a person
 * of the day; `ui/phones/sealed-words.ts` has a sentence for each.
 */
export type SealedProblem =
  /** No sealed batch at all, or one that was altered. */
  | { readonly code: 'sealed-garbage' }
  | { readonly code: 'sealed-too-large' }
  /** Shorter than it says. */
  | { readonly code: 'sealed-cut' }
  /** Of a form that only a newer version knows. */
  | { readonly code: 'sealed-newer' }
  | { readonly code: 'sealed-other-day' }
  /** Signed as it should be, and sealed with another key than the day's. */
  | { readonly code: 'sealed-wrong-key' }
  /** Sealed with a key that came after a phone was removed, and that this phone was not given. */
  | { readonly code: 'sealed-key-missing' }
  /** The signature is not by the key that it names. */
  | { readonly code: 'sealed-forged' }
  /** This platform cannot check a signature of that kind. */
  | { readonly code: 'sealed-unchecked' }
  /** By a key that nobody admitted. */
  | { readonly code: 'sealed-foreign' }
  /** By a phone that may only read. */
  | { readonly code: 'sealed-by-onlooker' }
  /** By a phone that was put off the day before. */
  | { readonly code: 'sealed-by-removed' }
  /** Known already. */
  | { readonly code: 'sealed-replayed' }
  /** It follows one that is not here. */
  | { readonly code: 'sealed-out-of-order' }
  /** It follows another past than the one that is here. */
  | { readonly code: 'sealed-past-changed' }
  /** The number of one that is here, with other bytes: two phones write with one key. */
  | { readonly code: 'sealed-number-twice' }
  /** An entry that is here with other content: two phones write as one. */
  | { readonly code: 'sealed-entry-twice' }
  /** Entries that only another admitted phone can have written, or that say who may write without the owner's signature. */
  | { readonly code: 'sealed-not-its-own' }
  /** More than may wait here for what it follows. */
  | { readonly code: 'sealed-too-many' };

export type SealedResult<T> = Result<T, SealedProblem>;
