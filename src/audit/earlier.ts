import type { Again } from '../quantities/again.ts';
import type { Verdict } from '../rulebook/judge.ts';
import type { Audit, Finding } from './audit.ts';

/** What one rule came to: a verdict and a finding a subject. */
export interface RuleFindings {
	readonly verdicts: readonly Verdict[];
	readonly findings: readonly Finding[];
}

/** An earlier audit without draws by the same model in the same units, and what has moved since: the rest is taken from it. */
export interface Earlier extends Again {
	readonly audit: Audit;
	/** In the order of the rulebook. */
	readonly byRule: readonly RuleFindings[];
}
