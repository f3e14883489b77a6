import type { Expression, Outcome } from './tree.ts';

/** Evaluates an expression against whatever the reader it was bound to sees now. */
export type Bound = () => Outcome;

/** Turns a name into a function that reads its present value; called once for each place the name stands in. */
export type Reader = (name: string) => () => Outcome;

/**
 * Turns a tree into closures, once, so that evaluating costs no look-up by name. `inside` gives those of its parts, where
 * they are there already.
 *
 * Three-valued: a known part that already decides, decides. Of the two ways of not being decided, "not known" goes
 * before "does not apply" in && and || (knowing more may decide it), and after it in arithmetic (knowing more cannot).
 */
export function bind(
	tree: Expression,
	reader: Reader,
	inside: (part: Expression) => Bound = part => bind(part, reader),
): Bound {
	switch (tree[0]) {
		case 'value':
		case 'list': {
			const value = tree[1];
			return () => value;
		}
		case 'name':
			return reader(tree[1]);
		case '!':
			return onOne(inside(tree[1]), a => !a);
		case 'size':
			return onOne(inside(tree[1]), a => (a as readonly unknown[]).length);
		case '&&':
			return junction(inside(tree[1]), inside(tree[2]), false);
		case '||':
			return junction(inside(tree[1]), inside(tree[2]), true);
		case '?:':
			return choice(inside(tree[1]), inside(tree[2]), inside(tree[3]));
		case '-':
			if (tree.length === 2) return onOne(inside(tree[1]), a => -(a as number));
			return onTwo(inside(tree[1]), inside(tree[2]!), binary['-']);
		default:
			return onTwo(inside(tree[1]), inside(tree[2]), binary[tree[0]]);
	}
}

type Known = NonNullable<Outcome>;

/**
 * Two figures whose difference is the noise of arithmetic on doubles are one: a target of 14 psi is twice a spring of
 * 7 psi, whatever the conversions left in the last digits. A share of the larger; nothing is measured that finely.
 */
const noise = 1e-12;

function alike(a: Known, b: Known): boolean {
	if (typeof a !== 'number' || typeof b !== 'number') return a === b;
	return a === b || Math.abs(a - b) <= noise * Math.max(Math.abs(a), Math.abs(b));
}

const binary: Readonly<Record<string, (a: Known, b: Known) => Outcome>> = {
	'==': alike,
	'!=': (a, b) => !alike(a, b),
	'<': (a, b) => a < b && !alike(a, b),
	'<=': (a, b) => a < b || alike(a, b),
	'>': (a, b) => a > b && !alike(a, b),
	'>=': (a, b) => a > b || alike(a, b),
	'+': (a, b) => finite((a as number) + (b as number)),
	'-': (a, b) => finite((a as number) - (b as number)),
	'*': (a, b) => finite((a as number) * (b as number)),
	'/': (a, b) => finite((a as number) / (b as number)),
	in: (a, b) => (b as readonly unknown[]).includes(a),
};

/** A figure too large to be one is not known: it decides nothing. */
function finite(figure: number): Outcome {
	return Number.isFinite(figure) ? figure : undefined;
}

function onOne(a: Bound, apply: (a: Known) => Outcome): Bound {
	return () => {
		const value = a();
		return value === undefined || value === null ? value : apply(value);
	};
}

function onTwo(a: Bound, b: Bound, apply: ((a: Known, b: Known) => Outcome) | undefined): Bound {
	if (apply === undefined) throw new TypeError('an operator that no expression has');
	return () => {
		const left = a();
		const right = b();
		if (left === null || right === null) return null;
		if (left === undefined || right === undefined) return undefined;
		return apply(left, right);
	};
}

/** `&&` is decided by one false, `||` by one true. */
function junction(a: Bound, b: Bound, decides: boolean): Bound {
	return () => {
		const left = a();
		if (left === decides) return decides;
		const right = b();
		if (right === decides) return decides;
		if (left === undefined || right === undefined) return undefined;
		if (left === null || right === null) return null;
		return !decides;
	};
}

function choice(test: Bound, yes: Bound, no: Bound): Bound {
	return () => {
		const value = test();
		if (value === undefined || value === null) return value;
		return value ? yes() : no();
	};
}
