declare module 'vin-validator' {
  /** Whether a VIN has 17 permitted characters and the right check digit. */
  export function validate(vin: string): boolean;
}
