/** What a procedure is checked by as it is written. */
export interface CheckedStep {
  readonly n: number;
  readonly plug: '' | 'fill-opened' | 'drained';
  readonly torque: { readonly stages: readonly ({ readonly Nm: number } | { readonly degrees: number })[] } | null;
  readonly oneTime: readonly { readonly part: string; readonly count: number }[];
}

export interface ProcedureWarning {
  readonly rule: 'drain-before-fill' | 'one-time-twice' | 'stage-lower' | 'torque-without-source';
  readonly step: number;
}

/**
 * Warnings of a procedure (common practice, no source): oil drained before the fill plug is proved open; a one-time part
 * named in two steps; a torque stage lower than the one before; torque figures without a named source.
 */
export function checkProcedure(steps: readonly CheckedStep[], sourceOfFigures: string): ProcedureWarning[] {
  const warnings: ProcedureWarning[] = [];
  let fillOpen = false;
  const used = new Set<string>();
  for (const step of steps) {
    if (step.plug === 'fill-opened') fillOpen = true;
    if (step.plug === 'drained' && !fillOpen) warnings.push({ rule: 'drain-before-fill', step: step.n });
    for (const { part } of step.oneTime) {
      const name = part.trim().toLowerCase();
      if (used.has(name)) warnings.push({ rule: 'one-time-twice', step: step.n });
      used.add(name);
    }
    const figures = (step.torque?.stages ?? []).flatMap((stage) => ('Nm' in stage ? [stage.Nm] : []));
    if (figures.some((figure, at) => at > 0 && figure < (figures[at - 1] ?? 0)))
      warnings.push({ rule: 'stage-lower', step: step.n });
    if (step.torque !== null && sourceOfFigures.trim() === '')
      warnings.push({ rule: 'torque-without-source', step: step.n });
  }
  return warnings;
}
