import { useState } from 'preact/hooks';
import { dateUserBits, type UserBitsForm, userBitsReadings } from '../../upkeep/due/user-bits.ts';
import { TextField } from '../kit/field.tsx';

const FORM_WORDS: Record<UserBitsForm, string> = {
  'st-309': 'ST 309: zone, year, month, day',
  'year-month-day': 'year, month, day, rest',
  'month-day-year': 'month, day, year, rest',
  'day-month-year': 'day, month, year, rest',
};

/** User bits for the day's date, and what bits read off a device may mean. */
export function UserBits({ date }: { date: string }) {
  const [typed, setTyped] = useState('');
  const [year = 0, month = 0, day = 0] = date.split('-').map(Number);
  const bits = date === '' ? null : dateUserBits({ year, month, day });
  const readings = typed.trim() === '' ? null : userBitsReadings(typed);
  return (
    <>
      <dl class="figures">
        <dt>User bits for {date || 'the date'}</dt>
        <dd class="mono">{bits?.ok ? spaced(bits.value) : 'the day has no date'}</dd>
      </dl>
      <p class="soft">As SMPTE ST 309: zone 00, year, month, day. Machines differ in the order.</p>
      <TextField
        label="Read user bits off a device"
        value={typed}
        onInput={setTyped}
        capitals="characters"
        placeholder="00 26 10 07"
      />
      {readings && (
        <ul role="status">
          {!readings.ok && <li class="soft">Eight digits, 0 to 9 and A to F.</li>}
          {readings.ok && readings.value.length === 0 && <li>No date in any known order.</li>}
          {readings.ok &&
            readings.value.map((reading) => (
              <li key={reading.form}>
                <b>
                  {reading.day}.{reading.month}.{String(reading.year).padStart(2, '0')}
                </b>{' '}
                <span class="soft">{FORM_WORDS[reading.form]}</span>
              </li>
            ))}
        </ul>
      )}
    </>
  );
}

const spaced = (bits: string): string => bits.replace(/(..)(?=.)/g, '$1 ');
