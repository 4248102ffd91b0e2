import type { PlanProblem } from '../plan/plan-problem.ts';
import type { Addition } from '../plan/setup/best-addition.ts';
import type { PlanAsked, PlanNews } from '../plan/setup/plan-news.ts';
import type { Plan, Planned } from '../plan/setup/plan-next-setup.ts';
import type { WhatIf } from '../plan/setup/what-if.ts';
import { fail, type Result } from '../shared/result.ts';

/** Where plans are computed. A new question cancels the one before; each answer carries its `number`. */
export interface PlanPort {
  readonly ask: (number: number, asked: PlanAsked) => void;
  readonly close: () => void;
}

export interface PlanListener {
  readonly hear: (number: number, news: PlanNews) => void;
  readonly failed: () => void;
}

/** May throw where the port is not available. */
export type OpenPlanPort = (listener: PlanListener) => PlanPort;

/** What is known about the next setup. */
export interface Planning {
  /** What the plan is for; until an answer comes this may not be the latest question. */
  readonly problem: PlanProblem | undefined;
  readonly planned: Planned | Result<never, { readonly code: 'plan-failed' }> | undefined;
  /** This is the first answer; the full one is still to come. */
  readonly isLooking: boolean;
  /** The full answer, if the user had already started on the first one. */
  readonly better: Plan | undefined;
  /** The one addition that would help; undefined while unknown. */
  readonly addition: Addition | 'none' | undefined;
  readonly whatIf:
    | { readonly voice: string; readonly answer: WhatIf | undefined; readonly isLooking: boolean }
    | undefined;
}

export interface Planner {
  readonly ask: (problem: PlanProblem) => void;
  /** Answered only when the full plan is there, so that like is compared with like. */
  readonly askWhatIf: (voice: string) => void;
  /** The user has started on the plan shown: from here on it is not replaced without asking. */
  readonly begin: () => void;
  readonly showBetter: () => void;
  readonly close: () => void;
}

export const NOTHING_PLANNED: Planning = {
  problem: undefined,
  planned: undefined,
  isLooking: false,
  better: undefined,
  addition: undefined,
  whatIf: undefined,
};

/** Asks the first port that works. Shows the first answer at once and the full one when it comes. */
export function planner(ports: readonly OpenPlanPort[], tell: (planning: Planning) => void): Planner {
  const waiting = [...ports];
  let port: PlanPort | undefined;
  let now = NOTHING_PLANNED;
  let number = 0;
  let asked: PlanAsked | undefined;
  let isBegun = false;

  const change = (part: Partial<Planning>): void => {
    now = { ...now, ...part };
    tell(now);
  };

  const openNext = (): PlanPort | undefined => {
    for (let open = waiting.shift(); open; open = waiting.shift()) {
      try {
        return open({ hear, failed });
      } catch {
        // Not available on this phone.
      }
    }
    return undefined;
  };

  const send = (question: PlanAsked): void => {
    number += 1;
    asked = question;
    port ??= openNext();
    if (port) port.ask(number, question);
    else change({ ...NOTHING_PLANNED, problem: question.problem, planned: fail({ code: 'plan-failed' }) });
  };

  const failed = (): void => {
    port?.close();
    port = undefined;
    if (asked) send(asked);
  };

  const askOpenWhatIf = (): void => {
    const { problem, planned, better, whatIf } = now;
    if (!whatIf) return;
    const plan = better ?? (planned?.ok ? planned.value : undefined);
    const isOpen = problem?.voices.some(({ id, needed }) => id === whatIf.voice && !needed);
    if (problem && plan && isOpen) send({ what: 'what-if', problem, voice: whatIf.voice, now: plan });
    else change({ whatIf: { ...whatIf, isLooking: false } });
  };

  const hear = (of: number, news: PlanNews): void => {
    if (of !== number || !asked) return;
    const { problem } = asked;
    if (news.what === 'what-if') {
      asked = undefined;
      change({ whatIf: { voice: news.voice, answer: news.answer, isLooking: false } });
    } else if (news.what === 'addition') {
      asked = undefined;
      change({ addition: news.addition ?? 'none' });
      askOpenWhatIf();
    } else if (news.what === 'first') {
      change({ problem, planned: news.planned, isLooking: true, better: undefined, addition: undefined });
    } else {
      const isHeld = isBegun && now.problem === problem && !haveSameMoves(now.planned, news.planned);
      const full = { problem, isLooking: false, better: undefined, addition: undefined };
      if (isHeld && news.planned.ok) change({ ...full, better: news.planned.value });
      else change({ ...full, planned: news.planned });
    }
  };

  return {
    ask(problem) {
      isBegun = false;
      if (now.whatIf) now = { ...now, whatIf: { ...now.whatIf, answer: undefined, isLooking: true } };
      send({ what: 'plan', problem });
    },
    askWhatIf(voice) {
      change({ whatIf: { voice, answer: undefined, isLooking: true } });
      if (asked?.what !== 'plan') askOpenWhatIf();
    },
    begin() {
      if (now.problem !== undefined && now.problem === asked?.problem) isBegun = true;
    },
    showBetter() {
      if (now.better) change({ planned: { ok: true, value: now.better }, better: undefined });
    },
    close() {
      port?.close();
    },
  };
}

const haveSameMoves = (one: Planning['planned'], other: Planned): boolean =>
  one?.ok === true && other.ok && JSON.stringify(one.value.moves) === JSON.stringify(other.value.moves);
