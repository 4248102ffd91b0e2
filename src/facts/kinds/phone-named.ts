import * as z from 'zod/mini';
import { shortText } from './envelope.ts';
import { kind } from './kind.ts';

/** Who holds the phone whose database wrote this, and their job on set. A phone only ever names itself. */
export const phoneNamed = kind('phone-named', z.object({ name: shortText, job: shortText }));
