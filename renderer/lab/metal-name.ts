import { tMaybe } from '../words/t.ts';

/** What a metal is called; its sign where there is no word for it. */
export const metalName = (element: string): string => tMaybe(`lab.metal-${element}`) ?? element;
