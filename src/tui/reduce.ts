import { typable } from '../text/sanitize.ts';
import type { App } from './app.ts';
import { dispatch } from './asking.ts';
import { globalKeys, help, helpWhileTyping, leaving, typing } from './global-keys.ts';
import { type Binding, bindingFor, scrollKeys } from './keymap.ts';
import type { Key } from './keys.ts';
import { erase, eraseBack, insert, move } from './line-editor.ts';
import { screens } from './screens.ts';
import { pageOf } from './view.ts';

/** Bindings of the screen in sight; while the keys are listed, what moves in that. */
const bindingsOf = (app: App): readonly Binding[] =>
	app.open === 'keys' ? scrollKeys() : [...screens[app.screen].bindings, help, helpWhileTyping, ...globalKeys];

/** The app after a key. Pure. */
export function reduce(before: App, key: Key): App {
	const app = key.key.startsWith('page-') ? { ...before, page: pageOf(before) } : before;
	const binding = bindingFor(bindingsOf(app), key, app);
	if (binding) return binding.run(app);
	// Any other key closes the list of keys; the one that leaves also leaves.
	if (app.open === 'keys') return key.key === 'ctrl-c' ? reduce({ ...app, open: null }, key) : { ...app, open: null };
	if (key.key === 'background')
		return { ...app, appearance: { ...app.appearance, background: key.light ? 'light' : 'dark' } };
	const taken = screens[app.screen].press?.(app, key);
	if (taken) return taken;
	if (!typing(app)) return app;
	const edited = edit(app, key);
	// What is typed over a list finds a question in it.
	if (app.screen === 'review' || app.screen === 'sections') return found(app, edited);
	// What is being typed anew is in doubt no more, and what was wrong with it is past.
	return edited.field !== app.field && app.screen === 'question' && app.interview && app.taking === 'answer'
		? dispatch(edited, { do: 'retype' })
		: edited;
}

/** The list of questions by what was typed; from the sections it is the list of all. */
function found(app: App, edited: App): App {
	if (edited.field === app.field) return edited;
	return { ...edited, screen: 'review', show: app.screen === 'sections' ? 'all' : app.show, cursor: 0 };
}

function edit(app: App, key: Key): App {
	switch (key.key) {
		case 'text':
		case 'paste': {
			const field = insert(app.field, typable(key.text));
			return { ...app, field };
		}
		case 'backspace':
			return { ...app, field: erase(app.field, 'before') };
		case 'delete':
			return { ...app, field: erase(app.field, 'under') };
		case 'left':
		case 'right':
		case 'home':
		case 'end':
			return { ...app, field: move(app.field, key.key) };
		case 'ctrl-u':
			return { ...app, field: eraseBack(app.field, 'line') };
		case 'ctrl-w':
			return { ...app, field: eraseBack(app.field, 'word') };
		case 'ctrl-d':
			return { ...app, effects: [...app.effects, ...leaving(app), { do: 'quit' }] };
		default:
			return app;
	}
}
