import type { Plan } from './plan-next-setup.ts';

/** Whether no plan is better, in any of the orders. */
export const isProven = ({ exact }: Plan): boolean => Object.values(exact).every(Boolean);
