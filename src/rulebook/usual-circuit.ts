import type { Expression } from '../expressions/tree.ts';
import type { Stage } from '../sheet/stage.ts';
import type { Text } from '../sheet/text.ts';

/** A circuit that most cars have: a row of the wiring worksheet. */
export interface UsualCircuit {
	readonly circuit: string;
	/** Other names that sheets have for it. */
	readonly also: readonly string[];
	/** The stage by which it is wanted. */
	readonly stage: Stage;
	/** The circuits of plugs that fill this row. */
	readonly pins: readonly string[];
	/** A: a usual current, common practice. */
	readonly current: number;
	/** Answers that hold its load and its length; null without such a question. */
	readonly load: string | null;
	readonly length: string | null;
	readonly when: Expression | null;
	readonly words: Text;
}
