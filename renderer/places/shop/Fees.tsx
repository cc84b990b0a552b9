import { CoreTax } from './CoreTax.tsx';
import { WasteFee } from './WasteFee.tsx';

/** What the shop's own rules put on a sheet beside its lines, and how old units are taxed. */
export function Fees() {
  return (
    <>
      <WasteFee />
      <CoreTax />
    </>
  );
}
