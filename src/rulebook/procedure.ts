import type { Expression } from '../expressions/tree.ts';
import type { Stage } from '../sheet/stage.ts';
import type { Text } from '../sheet/text.ts';

/** A step of a procedure. It stays unless `applies` is known to be false; with `only_when`, only where that is known to be true. */
export interface Step {
	readonly do: Text;
	readonly applies: Expression | null;
	readonly only_when: Expression | null;
	/** Rules that must hold before this step is done; none is settled later than the procedure's own stage. */
	readonly relies: readonly string[];
	readonly read: Text;
	readonly stop: Text;
	readonly cautions: readonly string[];
}

/** The steps of a stage, as rules/procedures has them. */
export interface Procedure {
	readonly title: string;
	readonly stage: Stage;
	readonly place: number;
	readonly steps: readonly Step[];
}
