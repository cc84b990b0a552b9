interface Props {
  readonly plate: string;
  readonly big?: boolean;
}

/** A number plate. */
export function Plate({ plate, big = false }: Props) {
  return <span className={big ? 'plate big' : 'plate'}>{plate}</span>;
}
