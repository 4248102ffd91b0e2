import { JetStreamApiError } from '@nats-io/jetstream';
import { errors } from '@nats-io/nats-core';
import type { Problem } from '../shared/result.ts';

/** Error codes of the server's API (nats-server, `server/errors.json`). */
const STREAM_NOT_FOUND = 10059;
const NO_LOG = [STREAM_NOT_FOUND, 10039, 10076];
const TOO_LARGE = [10054, 10097];
/** No room by its own limits, by the account's, or on its disk. */
const FULL = [10023, 10028, 10047, 10077, 10122];

export const isStreamMissing = (error: unknown): boolean =>
  error instanceof JetStreamApiError && error.code === STREAM_NOT_FOUND;

/** What went wrong with a server, as something that has a sentence. */
export function problemOf(error: unknown): Problem {
  if (error instanceof errors.AuthorizationError) return { code: 'live-password' };
  if (error instanceof errors.UserAuthenticationExpiredError) return { code: 'live-password' };
  if (error instanceof errors.PermissionViolationError) return { code: 'live-not-allowed' };
  if (error instanceof errors.InvalidArgumentError && /max_payload/.test(error.message))
    return { code: 'live-too-large' };
  if (error instanceof JetStreamApiError) return problemOfApi(error);
  if (error instanceof errors.NoRespondersError) return { code: 'live-no-log' };
  if (error instanceof errors.TimeoutError) return { code: 'live-slow' };
  // A request that failed tells why by its cause.
  if (error instanceof Error && error.cause instanceof Error) return problemOf(error.cause);
  return { code: 'live-gone' };
}

function problemOfApi(error: JetStreamApiError): Problem {
  const { code } = error;
  if (NO_LOG.includes(code)) return { code: 'live-no-log' };
  if (TOO_LARGE.includes(code)) return { code: 'live-too-large' };
  // A full disk comes as a plain failure to store.
  if (FULL.includes(code) || /maximum|exceeded|no space/i.test(error.message)) return { code: 'live-full' };
  return { code: 'live-slow' };
}
