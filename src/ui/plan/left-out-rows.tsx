import type { ComponentChildren } from 'preact';
import type { Day } from '../../day/model.ts';
import type { Plan } from '../../plan/setup/plan-next-setup.ts';
import { Row } from '../kit/row.tsx';
import { nameOf } from '../words/chain.ts';
import { leftOutWords } from './words.ts';

interface LeftOutRowsProps {
  readonly day: Day;
  readonly plan: Plan;
  /** Said at the end of each row. */
  readonly word: ComponentChildren;
}

/** Whom a plan does not get, each with the reason. */
export const LeftOutRows = ({ day, plan, word }: LeftOutRowsProps) => (
  <>
    {plan.leftOut.map(({ voice, why }) => (
      <li key={voice}>
        <Row mark="broken" title={nameOf(day, voice)} word={word} under={leftOutWords(day, why)} />
      </li>
    ))}
  </>
);
