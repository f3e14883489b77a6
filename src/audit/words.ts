import type { Outcome } from '../expressions/tree.ts';
import type { AnyQuantity } from '../quantities/quantity.ts';
import type { Rule } from '../rulebook/rulebook.ts';
import type { Question, UnitSet } from '../sheet/question.ts';
import { inMetric } from './metric.ts';
import { type Shown, showValue } from './show.ts';

/** What the names in a rule's words stand for. */
export class Wording {
	private readonly questions: ReadonlyMap<string, Question>;
	private readonly quantities: ReadonlyMap<string, AnyQuantity>;
	readonly units: UnitSet;

	constructor(questions: readonly Question[], quantities: readonly AnyQuantity[], units: UnitSet) {
		this.questions = new Map(questions.map(question => [question.id, question]));
		this.quantities = new Map(quantities.map(quantity => [quantity.id, quantity]));
		this.units = units;
	}

	/** What a name is; within a rule its thresholds and the part at hand come first. */
	what(name: string, rule: Rule | null): Shown {
		const threshold = rule && Object.hasOwn(rule.thresholds, name) ? rule.thresholds[name] : undefined;
		if (threshold) {
			// A threshold that only names something is written as that something is.
			return threshold.value[0] === 'name' ? this.what(threshold.value[1], null) : { threshold };
		}
		const each = rule?.each ? this.questions.get(rule.each.answer) : undefined;
		if (name === 'value' && each) return { reading: each };
		if (name === 'item' && each) return { question: each };
		const question = this.questions.get(name);
		if (question) return { question };
		const quantity = this.quantities.get(name);
		return quantity ? { quantity } : {};
	}

	/** A value as written for the person; null when it is not known. */
	show(name: string, value: Outcome, rule: Rule | null = null): string | null {
		return showValue(value, this.what(name, rule), this.units);
	}

	/** A text without names, with the figures that it has of itself in the units asked for. */
	say(text: string): string {
		return this.units === 'metric' ? inMetric(text) : text;
	}

	/**
	 * A text with its {names} filled in, and the figures that it has of itself in the units asked for. A sentence with a
	 * name that is not known is left out; a text of which nothing is left is empty.
	 */
	fill(text: string, read: (name: string) => Outcome, rule: Rule | null = null): string {
		if (!unfinished.test(text)) return this.say(text);
		const filled: string[] = [];
		for (const pieces of sentences(text, this.units)) {
			let sentence = '';
			let whole = true;
			for (let index = 0; index < pieces.length && whole; index++) {
				const piece = pieces[index]!;
				const shown = index % 2 === 0 ? piece : this.show(piece, read(piece), rule);
				if (shown === null) whole = false;
				else sentence += shown;
			}
			if (whole && sentence !== '') filled.push(sentence);
		}
		return filled.join(' ');
	}
}

/** A name to fill in, or sentences that are not one space apart. Most texts of a rulebook have neither. */
const unfinished = /\{|\s\s|[^\S ]/;

const split: Readonly<Record<UnitSet, Map<string, readonly (readonly string[])[]>>> = {
	us: new Map(),
	metric: new Map(),
};

/**
 * A text split behind the full stops that end its sentences: those with a capital, a digit or a brace after them. Of each
 * sentence words and names by turns. The rulebook's texts come again with every sheet, so they are split once.
 */
function sentences(text: string, units: UnitSet): readonly (readonly string[])[] {
	let known = split[units].get(text);
	if (!known) {
		const said = units === 'metric' ? inMetric(text) : text;
		known = said.split(/(?<=[.!?])\s+(?=[A-Z0-9{"(])/).map(sentence => sentence.split(/\{([^{}]*)\}/));
		split[units].set(text, known);
	}
	return known;
}
