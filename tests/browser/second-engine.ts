/**
 * The second engine begins a while after the first numbers and takes a processor for many seconds, which no journey
 * about something else waits for, but all are slowed by. So the page's worker for it is held back, as on a very slow
 * machine, until a journey asks for its verdict: what it was sent meanwhile reaches it then, in the order sent.
 */
import type { BrowserContext, Page } from 'playwright/test';

declare global {
	interface Window {
		letSecondEngineBegin?: () => void;
		hasSecondEngineBegun?: boolean;
	}
}

/** Holds the second engine back in every page of a context. */
export const holdSecondEngine = (context: BrowserContext) => context.addInitScript(hold);

/** Lets it begin in this page, if it was held back. */
export const letSecondEngineBegin = (page: Page) =>
	page.evaluate(() => window.letSecondEngineBegin?.());

export const hasSecondEngineBegun = (page: Page): Promise<boolean> =>
	page.evaluate(() => window.hasSecondEngineBegun === true);

/** Runs in the page, before its own scripts. */
function hold() {
	const Plain = window.Worker;
	let isHeld = true;
	const waiting: (() => void)[] = [];

	class Held extends EventTarget {
		onmessage: Worker['onmessage'] = null;
		onerror: Worker['onerror'] = null;
		#sent: { readonly port?: MessagePort }[] = [];
		#worker: Worker | null = null;
		#ended = false;

		constructor(url: string | URL, options?: WorkerOptions) {
			super();
			waiting.push(() => this.#begin(new Plain(url, options)));
		}

		postMessage(message: { readonly port?: MessagePort }, transfer: Transferable[] = []) {
			if (this.#worker) this.#worker.postMessage(message, transfer);
			else this.#sent.push(structuredClone(message, { transfer }));
		}

		terminate() {
			this.#ended = true;
			this.#worker?.terminate();
		}

		#begin(worker: Worker) {
			if (this.#ended) return worker.terminate();
			this.#worker = worker;
			worker.onmessage = (event) => this.onmessage?.call(worker, event);
			worker.onerror = (event) => this.onerror?.call(worker, event);
			for (const message of this.#sent.splice(0))
				worker.postMessage(message, message.port ? [message.port] : []);
		}
	}

	window.Worker = new Proxy(Plain, {
		construct: (_, [url, options]: [string | URL, WorkerOptions?]) =>
			isHeld && /verifier\.worker/.test(String(url))
				? new Held(url, options)
				: new Plain(url, options)
	});
	window.letSecondEngineBegin = () => {
		isHeld = false;
		window.hasSecondEngineBegun = true;
		for (const begin of waiting.splice(0)) begin();
	};
}
