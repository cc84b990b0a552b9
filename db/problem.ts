import type { z } from 'zod';
import { PROBLEMS, type Problem } from '../core/contract/problems.ts';

interface Named {
  /** From the outermost field inwards, as `settings.taxes.0.ratePpm`. */
  readonly path: string;
  readonly problem: string;
  readonly with?: Record<string, string | number>;
}

const named = (
  issue: z.core.$ZodIssue,
  problem: Problem,
  figures?: Record<string, string | number>,
  ...inside: PropertyKey[]
): Named => ({
  path: [...issue.path, ...inside].map(String).join('.'),
  problem,
  ...(figures ? { with: figures } : {}),
});

// The names of JSON's kinds as zod has them.
const NOT: Readonly<Record<string, Problem>> = {
  number: 'not-a-number',
  string: 'not-text',
  boolean: 'not-yes-or-no',
  array: 'not-a-list',
  tuple: 'not-a-list',
  object: 'not-fields',
  record: 'not-fields',
};

const MOST = 20;

/** What does not fit with an input, one problem a field and not more than anybody would read. */
export function problemsOf(issues: readonly z.core.$ZodIssue[]): Named[] {
  // Of several problems of one field the last is the narrowest.
  const byPath = new Map(issues.map(problemOf).map((each) => [each.path, each]));
  return [...byPath.values()].slice(0, MOST);
}

/** What does not fit, by the names of core/contract/problems.ts: sentences live with the doors. */
function problemOf(issue: z.core.$ZodIssue): Named {
  switch (issue.code) {
    case 'too_big': {
      const most = { most: Number(issue.maximum) };
      return named(
        issue,
        ({ string: 'too-long', array: 'too-many' } as const)[issue.origin as 'string'] ?? 'too-much',
        most,
      );
    }
    case 'too_small': {
      if (issue.origin === 'string') return named(issue, 'missing');
      return named(issue, issue.origin === 'array' ? 'too-few' : 'too-little', { least: Number(issue.minimum) });
    }
    case 'invalid_type': {
      if (issue.message.endsWith('received undefined')) return named(issue, 'missing');
      if (issue.expected === 'int') return named(issue, 'not-whole');
      return named(issue, NOT[issue.expected] ?? 'wrong-form');
    }
    case 'unrecognized_keys':
      return named(issue, 'unknown-field', undefined, issue.keys[0] ?? '');
    case 'invalid_value':
      return named(issue, 'not-one-of-these', { choices: issue.values.map(String).join(', ') });
    case 'custom':
      // A check of ours brings its name as its message.
      return named(issue, Object.hasOwn(PROBLEMS, issue.message) ? (issue.message as Problem) : 'wrong-form');
    default:
      return named(issue, 'wrong-form');
  }
}
