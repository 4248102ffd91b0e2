import type { Plan } from './plan-next-setup.ts';

/** Whether the plan is proven best in all orders. */
export const isProven = ({ exact }: Plan): boolean => Object.values(exact).every(Boolean);
