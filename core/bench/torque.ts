/** A group of fasteners tightened in stages; an angle stage counts as a stage. */
export interface TorqueGroup {
  readonly fasteners: number;
  readonly stages: number;
}

/** Entries that a group asks for: every fastener at every stage. Common practice, no source. */
export function requiredEntries({ fasteners, stages }: TorqueGroup): number {
  return fasteners * stages;
}

/** Entries still missing; the job cannot be closed while there are any. */
export function missingEntries(group: TorqueGroup, recorded: number): number {
  return Math.max(0, requiredEntries(group) - recorded);
}
