import { z } from 'zod';
import { missingEntries, requiredEntries } from '../../core/bench/torque.ts';
import { stopsOf } from '../../core/order/stops.ts';
import { type Case, mapped } from './case.ts';

const whole = z.int();

export const torqueCases: Readonly<Record<string, Case>> = {
  T28: mapped(z.strictObject({ fasteners: whole, stages: whole, recorded: whole }), ({ recorded, ...group }) => {
    const missing = missingEntries(group, recorded);
    const stops = stopsOf({
      openClocks: [],
      forgottenClocks: [],
      heldJobs: [],
      excess: 0,
      ownMaximum: null,
      overMaximum: 0,
      seesPrices: true,
      poMissing: false,
      issuedWithoutLine: [],
      torqueMissing: missing === 0 ? [] : [{ job: 'A', step: 1, missing }],
      secondMissing: [],
      stepsFailed: [],
      stepsLeftOut: [],
      finalChecksMissing: [],
      quarantined: [],
      mileageOutMissing: false,
      outsideBillMissing: [],
      oldPartsUnanswered: false,
    });
    return { required: requiredEntries(group), missing, may_close: stops.length === 0 };
  }),
};
