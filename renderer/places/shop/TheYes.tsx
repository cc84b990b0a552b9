import { WrittenEstimate } from './WrittenEstimate.tsx';
import { YesRule } from './YesRule.tsx';

/** The owner's own rules round a yes: how far prices may drift past it, and what has to be in writing before. */
export function TheYes() {
  return (
    <>
      <YesRule />
      <WrittenEstimate />
    </>
  );
}
