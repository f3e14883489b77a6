import type { Outcome } from '../expressions/tree.ts';
import type { AnyQuantity } from '../quantities/quantity.ts';
import type { Rule } from '../rulebook/rulebook.ts';
import type { Question, UnitSet } from '../sheet/question.ts';
import { type Text, textIn } from '../sheet/text.ts';
import { type Formattable, formatValue } from './format.ts';

/** What the names in a rule's words stand for. */
export class Wording {
	private readonly questions: ReadonlyMap<string, Question>;
	private readonly quantities: ReadonlyMap<string, AnyQuantity>;
	readonly units: UnitSet;
	/** The rulebook's texts are the same for every sheet, so they are made ready once; names may mean something else in each rule. */
	private readonly texts = new Map<Rule | null, Map<string, Ready>>();
	private readonly rules = new Map<Rule, ReadyRule>();

	constructor(questions: readonly Question[], quantities: readonly AnyQuantity[], units: UnitSet) {
		this.questions = new Map(questions.map(question => [question.id, question]));
		this.quantities = new Map(quantities.map(quantity => [quantity.id, quantity]));
		this.units = units;
	}

	/** What a name is; within a rule its thresholds and the part at hand come first. */
	what(name: string, rule: Rule | null): Formattable {
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

	/** The short name of an answer or a quantity; a name that is neither is its own. */
	label(id: string): string {
		// A usual value that a pack gave has the pack behind it: `fuel.pressure (my pack)`.
		const [plain = id, from] = id.split(/ (?=\()/);
		const label = this.questions.get(plain)?.label ?? this.quantities.get(plain)?.label ?? plain;
		return from === undefined ? label : `${label} ${from}`;
	}

	/** A value as written for the person; null when it is not known. */
	show(name: string, value: Outcome, rule: Rule | null = null): string | null {
		return formatValue(value, this.what(name, rule), this.units);
	}

	/** A text without names, as a reader of these units gets it. */
	say(text: Text): string {
		return textIn(text, this.units);
	}

	/**
	 * A text with its {names} filled in, as a reader of these units gets it. A sentence with a
	 * name that is not known is left out; a text of which nothing is left is empty.
	 */
	fill(text: Text, read: (name: string) => Outcome, rule: Rule | null = null): string {
		return this.filled(this.readied(text, rule), read);
	}

	/** A rule's words as `fill` would have them, by what they are for. */
	ofRule(rule: Rule, read: (name: string) => Outcome): RuleWords<string> {
		let ready = this.rules.get(rule);
		if (!ready) this.rules.set(rule, (ready = this.readiedRule(rule)));
		const { plain, words } = ready;
		if (plain) return plain;
		const filled = (text: Ready) => this.filled(text, read);
		return { title: filled(words.title), why: filled(words.why), do: words.do.map(filled), prove: filled(words.prove) };
	}

	private readiedRule(rule: Rule): ReadyRule {
		const readied = (text: Text) => split(this.say(text), name => this.what(name, rule));
		const [title, why, steps] = [readied(rule.title), readied(rule.why), rule.do.map(readied)];
		const prove = readied(rule.prove);
		const arePlain = isPlain(title) && isPlain(why) && isPlain(prove) && steps.every(isPlain);
		return { words: { title, why, do: steps, prove }, plain: arePlain ? { title, why, do: steps, prove } : null };
	}

	private filled(ready: Ready, read: (name: string) => Outcome): string {
		if (isPlain(ready)) return ready;
		let filled = '';
		for (const pieces of ready) {
			const sentence = this.sentence(pieces, read);
			if (sentence) filled += filled === '' ? sentence : ` ${sentence}`;
		}
		return filled;
	}

	private readied(text: Text, rule: Rule | null): Ready {
		const said = this.say(text);
		let texts = this.texts.get(rule);
		if (texts === undefined) this.texts.set(rule, (texts = new Map()));
		let ready = texts.get(said);
		if (ready === undefined) texts.set(said, (ready = split(said, name => this.what(name, rule))));
		return ready;
	}

	/** Words and names by turns as one sentence; null when a name in it is not known. */
	private sentence({ begins, names }: Sentence, read: (name: string) => Outcome): string | null {
		let sentence = begins;
		for (const { name, what, then } of names) {
			const shown = formatValue(read(name), what, this.units, true);
			if (shown === null) return null;
			sentence += shown + then;
		}
		return sentence;
	}
}

/** Words and names by turns: it begins and ends with words, which may be empty. */
interface Sentence {
	readonly begins: string;
	readonly names: readonly { readonly name: string; readonly what: Formattable; readonly then: string }[];
}

/**
 * A text split behind the full stops that end its sentences: those with a capital, a digit or a brace after them; one
 * without names as it will always be.
 */
type Ready = string | readonly Sentence[];

const isPlain = (ready: Ready): ready is string => typeof ready === 'string';

/** A name to fill in, or sentences that are not one space apart. Most texts of a rulebook have neither. */
const unfinished = /\{|\s\s|[^\S ]/;

function split(said: string, whatIs: (name: string) => Formattable): Ready {
	if (!unfinished.test(said)) return said;
	const sentences = said.split(/(?<=[.!?])\s+(?=[A-Z0-9{"(])/).map(sentence => sentence.split(/\{([^{}]*)\}/));
	if (sentences.every(({ length }) => length === 1)) return sentences.flat().filter(Boolean).join(' ');
	return sentences.map(pieces => {
		const names = pieces.filter((_, at) => at % 2 === 1);
		return {
			begins: pieces[0]!,
			names: names.map((name, at) => ({ name, what: whatIs(name), then: pieces[2 * at + 2]! })),
		};
	});
}

/** What a rule says, in texts of one sort or another. */
interface RuleWords<Form> {
	readonly title: Form;
	readonly why: Form;
	readonly do: readonly Form[];
	readonly prove: Form;
}

/** A rule's words made ready; `plain` where there is no name in any of them. */
interface ReadyRule {
	readonly words: RuleWords<Ready>;
	readonly plain: RuleWords<string> | null;
}
