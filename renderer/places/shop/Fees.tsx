import { WasteFee } from './WasteFee.tsx';

/** What the shop's own rules put on a sheet beside its lines. */
export function Fees() {
  return <WasteFee />;
}
