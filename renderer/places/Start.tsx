import { SetUp } from './set-up/SetUp.tsx';

/** First start: the garage is set up on one page. */
export default function Start() {
  return <SetUp />;
}
