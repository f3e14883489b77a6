import { spawn } from 'node:child_process';
import { once } from 'node:events';
import type { Readable, Writable } from 'node:stream';
import { temporaryFolder } from './folder.ts';

type Reply = { readonly id?: number; readonly method?: string; readonly result?: unknown; readonly error?: unknown };

/** Debian's Chromium without a window, spoken to over its debugging pipe (Chrome DevTools Protocol, an open one). */
export async function openBrowser() {
	const flags = [
		'--headless=new',
		'--no-sandbox',
		'--disable-gpu',
		'--remote-debugging-pipe',
		'--allow-file-access-from-files',
	];
	const child = spawn('chromium', [...flags, `--user-data-dir=${temporaryFolder()}`, 'about:blank'], {
		stdio: ['ignore', 'ignore', 'ignore', 'pipe', 'pipe'],
	});
	await once(child, 'spawn');
	const [to, from] = [child.stdio[3] as Writable, child.stdio[4] as Readable];
	const waiting = new Map<number, (reply: Reply) => void>();
	const heard: Reply[] = [];
	let half = '';
	from.setEncoding('utf8').on('data', (text: string) => {
		const messages = (half + text).split('\0');
		half = messages.pop()!;
		for (const message of messages) {
			const reply = JSON.parse(message) as Reply;
			if (reply.id === undefined) heard.push(reply);
			else waiting.get(reply.id)?.(reply);
		}
	});
	let last = 0;
	let sessionId: string | undefined;
	const send = async (method: string, params: object = {}): Promise<Record<string, unknown>> => {
		const id = ++last;
		const answered = new Promise<Reply>(resolve => waiting.set(id, resolve));
		to.write(`${JSON.stringify({ id, method, params, ...(sessionId ? { sessionId } : {}) })}\0`);
		const { result, error } = await answered;
		if (error) throw new Error(`${method}: ${JSON.stringify(error)}`);
		return result as Record<string, unknown>;
	};
	const { targetId } = await send('Target.createTarget', { url: 'about:blank' });
	sessionId = (await send('Target.attachToTarget', { targetId, flatten: true })).sessionId as string;
	await send('Page.enable');
	await send('Network.enable');
	const run = async (script: string): Promise<unknown> => {
		const { result } = await send('Runtime.evaluate', { expression: script, returnByValue: true, awaitPromise: true });
		return (result as { value?: unknown }).value;
	};
	return {
		send,
		run,
		/** Addresses that the page asked for. */
		asked: () =>
			heard
				.filter(({ method }) => method === 'Network.requestWillBeSent')
				.map(reply => (reply as unknown as { params: { request: { url: string } } }).params.request.url),
		open: async (url: string) => {
			await send('Page.navigate', { url });
			await run(
				'new Promise(done => document.readyState === "complete" ? done() : addEventListener("load", () => done()))',
			);
		},
		/** A click where the first of these is, after it was scrolled into sight. */
		click: async (selector: string) => {
			const place = (await run(
				`(() => { const at = document.querySelector(${JSON.stringify(selector)}); at.scrollIntoView({ block: 'center' }); const { x, y, width, height } = at.getBoundingClientRect(); return { x: x + width / 2, y: y + height / 2 }; })()`,
			)) as { x: number; y: number };
			for (const type of ['mousePressed', 'mouseReleased'])
				await send('Input.dispatchMouseEvent', { type, ...place, button: 'left', clickCount: 1 });
		},
		close: async () => {
			child.kill();
			await once(child, 'exit');
		},
	};
}
