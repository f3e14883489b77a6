import type { Comparison, Expression } from '../../expressions/tree.ts';
import { quote } from './fields.ts';
import { type Names, type Type, wordsFor } from './names.ts';
import { agree, differenceOf, productOf, same, sumOf } from './types.ts';

/** A compiled expression with what it gives. */
export interface Compiled {
	readonly tree: Expression;
	readonly type: Type;
}

/** Why an expression is not taken, and where in it. */
export class Refused extends Error {
	readonly at: number;
	constructor(message: string, at: number) {
		super(message);
		this.at = at;
	}
}

/** A node as the grammar's parser makes it. */
interface Parsed {
	readonly op: string;
	readonly args: unknown;
	readonly start: number;
}

const bare: Type = { is: 'number', kind: 'ratio' };
const yesNo: Type = { is: 'yes-no' };

/**
 * One walk over a parsed expression: checks names, kinds and choices, and refuses everything but comparison, + - *,
 * division by a written decimal, && || ! ?:, `in` and size. Throws Refused.
 */
export class Walk {
	private readonly names: Names;
	constructor(names: Names) {
		this.names = names;
	}

	walk(node: Parsed): Compiled {
		const args = node.args as Parsed[];
		switch (node.op) {
			case 'value':
				return this.literal(node);
			case 'id':
				return this.name(String(node.args), node);
			case '.':
				return this.member(node);
			case 'list':
				return this.list(args, node);
			case '!_':
				return { tree: ['!', this.ofType(node.args as Parsed, 'yes-no').tree], type: yesNo };
			case '-_':
				return this.negative(node.args as Parsed);
			case '&&':
			case '||': {
				const [a, b] = [this.ofType(args[0]!, 'yes-no'), this.ofType(args[1]!, 'yes-no')];
				return { tree: [node.op, a.tree, b.tree], type: yesNo };
			}
			case '?:':
				return this.conditional(args, node);
			case '==':
			case '!=':
			case '<':
			case '<=':
			case '>':
			case '>=':
				return this.comparison(node.op, args, node);
			case '+':
			case '-':
			case '*':
			case '/':
				return this.arithmetic(node.op, args, node);
			case 'in':
				return this.membership(args, node);
			case 'call':
				return this.call(node);
			default:
				throw new Refused(
					`${quote(node.op)} is not used in rules: only comparison, + - * /, && || ! ?:, in, size`,
					node.start,
				);
		}
	}

	private literal({ args: value, start }: Parsed): Compiled {
		if (typeof value === 'string')
			return { tree: ['value', value], type: { is: 'text', choices: [value], written: true } };
		if (typeof value === 'boolean') return { tree: ['value', value], type: yesNo };
		const number = typeof value === 'bigint' ? Number(value) : value;
		if (typeof number === 'number' && Number.isFinite(number)) return { tree: ['value', number], type: bare };
		throw new Refused('only texts, finite numbers, true and false are written in rules', start);
	}

	private name(name: string, node: Parsed): Compiled {
		const type = this.names.get(name);
		if (!type) throw new Refused(`${quote(name)} is no answer, no quantity and no threshold of this rule`, node.start);
		return { tree: ['name', name], type };
	}

	private member(node: Parsed): Compiled {
		const [of, member] = node.args as [Parsed, string];
		if (of.op !== 'id') throw new Refused('a name has two parts: section.answer', node.start);
		return this.name(`${String(of.args)}.${member}`, of);
	}

	private list(args: Parsed[], node: Parsed): Compiled {
		const texts = args.map(arg => {
			if (arg.op !== 'value' || typeof arg.args !== 'string') throw new Refused('a list holds texts only', arg.start);
			return arg.args;
		});
		if (texts.length === 0) throw new Refused('an empty list', node.start);
		return { tree: ['list', texts], type: { is: 'list', choices: texts, written: true } };
	}

	private negative(of: Parsed): Compiled {
		const { tree, type } = this.ofType(of, 'number');
		return { tree: tree[0] === 'value' ? ['value', -(tree[1] as number)] : ['-', tree], type };
	}

	private ofType<Is extends Type['is']>(node: Parsed, is: Is): Compiled & { type: Extract<Type, { is: Is }> } {
		const found = this.walk(node);
		if (found.type.is === is) return found as Compiled & { type: Extract<Type, { is: Is }> };
		const want = { number: 'a number', 'yes-no': 'a yes or no', text: 'a choice', list: 'a list' }[is];
		throw new Refused(`${want} is needed here, this is ${wordsFor(found.type)}`, node.start);
	}

	private conditional(args: Parsed[], node: Parsed): Compiled {
		const test = this.ofType(args[0]!, 'yes-no');
		const [a, b] = [this.walk(args[1]!), this.walk(args[2]!)];
		const type = same(a.type, b.type);
		if (!type)
			throw new Refused(`both sides of ?: must be alike: ${wordsFor(a.type)} and ${wordsFor(b.type)}`, node.start);
		return { tree: ['?:', test.tree, a.tree, b.tree], type };
	}

	private comparison(op: Comparison, args: Parsed[], node: Parsed): Compiled {
		const [a, b] = [this.walk(args[0]!), this.walk(args[1]!)];
		const ordered = op !== '==' && op !== '!=';
		if (ordered && (a.type.is !== 'number' || b.type.is !== 'number'))
			throw new Refused(
				`${op} compares numbers, not ${wordsFor(a.type.is === 'number' ? b.type : a.type)}`,
				node.start,
			);
		if (a.type.is === 'list' || !same(a.type, b.type))
			throw new Refused(`${wordsFor(a.type)} cannot be compared with ${wordsFor(b.type)}`, node.start);
		this.agreeing(a.type, b.type, node);
		return { tree: [op, a.tree, b.tree], type: yesNo };
	}

	private arithmetic(op: '+' | '-' | '*' | '/', args: Parsed[], node: Parsed): Compiled {
		const [a, b] = [this.ofType(args[0]!, 'number'), this.ofType(args[1]!, 'number')];
		const by = args[1]!;
		if (op === '/' && (by.op !== 'value' || typeof by.args !== 'number' || by.args === 0))
			throw new Refused('division is by a written decimal other than 0, as in x / 2.0', by.start);
		const kind = { '+': sumOf, '-': differenceOf, '*': productOf, '/': productOf }[op](a.type.kind, b.type.kind);
		if (!kind) throw new Refused(`${wordsFor(a.type)} ${op} ${wordsFor(b.type)} has no meaning here`, node.start);
		return { tree: [op, a.tree, b.tree], type: { is: 'number', kind } };
	}

	private membership(args: Parsed[], node: Parsed): Compiled {
		const [a, b] = [this.ofType(args[0]!, 'text'), this.ofType(args[1]!, 'list')];
		this.agreeing(a.type, b.type, node);
		return { tree: ['in', a.tree, b.tree], type: yesNo };
	}

	private call(node: Parsed): Compiled {
		const [name, args] = node.args as [string, Parsed[]];
		if (name !== 'size' || args.length !== 1)
			throw new Refused(`${quote(name)} is not called in rules; only size(list) is`, node.start);
		return { tree: ['size', this.ofType(args[0]!, 'list').tree], type: { is: 'number', kind: 'count' } };
	}

	private agreeing(a: Type, b: Type, node: Parsed): void {
		const strange = agree(a, b);
		if (strange)
			throw new Refused(`${quote(strange.text)} is not one of the choices ${strange.offered.join(', ')}`, node.start);
	}
}
