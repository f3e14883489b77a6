import { curveFault, orderFault, pairsFault, perCylinderFault, severalFault } from './check-list.ts';
import { numberFault, rangeFault } from './check-number.ts';
import { circuitsFault, codesFault, loadsFault } from './check-rows.ts';
import { type Context, type Fault, no } from './fault.ts';

/** Checks one value against its question. */
export function faultIn(value: unknown, context: Context): Fault {
	const { question } = context;
	switch (question.kind) {
		case 'choice':
			return typeof value === 'string' && Object.hasOwn(question.choices, value)
				? null
				: no(value, `one of ${Object.keys(question.choices).join(', ')}`);
		case 'several':
			return severalFault(value, question);
		case 'whole':
			return Number.isInteger(value)
				? rangeFault(value as number, context)
				: no(value, 'a whole number without a unit');
		case 'per-cylinder':
			return perCylinderFault(value, context);
		case 'firing-order':
			return orderFault(value, context);
		case 'pairs':
			return pairsFault(value, context);
		case 'curve':
			return curveFault(value, context);
		case 'loads':
			return loadsFault(value, context);
		case 'codes':
			return codesFault(value);
		case 'circuits':
			return circuitsFault(value);
		case 'teeth':
			return isToothPattern(value)
				? null
				: no(value, 'a tooth pattern like "36-1": places, and of them the teeth that are missing');
		default:
			return numberFault(value, context);
	}
}

/** `36-1`: 36 places, one of them without its tooth. More missing than half the places is no wheel. */
function isToothPattern(value: unknown): boolean {
	const [, places, missing] = (typeof value === 'string' && /^(\d{1,3})-(\d{1,2})$/.exec(value)) || [];
	return places !== undefined && 2 * Number(missing) < Number(places);
}
