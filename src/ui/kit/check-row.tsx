import { isReadOnly } from './reads-only.ts';
import './check-row.css';

export interface CheckRowProps {
  readonly number?: number;
  readonly title: string;
  readonly under?: string;
  readonly isTicked: boolean;
  /** It cannot be ticked now. */
  readonly isStale?: boolean;
  readonly onTick: () => void;
}

/** One thing to do, ticked off when it is done; a phone that only reads shows the tick. */
export const CheckRow = ({ number, title, under, isTicked, isStale = false, onTick }: CheckRowProps) => (
  <label class="row check-row">
    <span class="row-lead">
      <input type="checkbox" checked={isTicked} disabled={isStale || isReadOnly.value} onChange={onTick} />
      {number !== undefined && <span class="row-number">{number}</span>}
    </span>
    <span class="row-text">
      <strong>{title}</strong>
      {under && <span class="soft">{under}</span>}
    </span>
  </label>
);
