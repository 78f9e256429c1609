/**
 * Words and elements as XML. A number has as many decimals as an eye can tell apart, so files stay small.
 */

/** What XML 1.0 allows nowhere, not even escaped: most control characters, and halves of characters. */
const FORBIDDEN =
	// eslint-disable-next-line no-control-regex
	/[\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]|[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/g;

const ESCAPES: Readonly<Record<string, string>> = {
	...{ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' },
	// Written out, or a reader would turn them into plain spaces inside an attribute.
	...{ '\t': '&#9;', '\n': '&#10;', '\r': '&#13;' }
};

export const escapeXml = (text: string) =>
	text.replace(FORBIDDEN, '').replace(/[&<>"'\t\n\r]/g, (sign) => ESCAPES[sign] ?? sign);

/** 12.3456 gives "12.35", and 12.00 "12". */
export const short = (value: number, decimals = 2) => String(Number(value.toFixed(decimals)) || 0);

/** Attributes left undefined are not written; numbers are shortened. */
export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** One element; its content is markup already. */
export function element(name: string, attributes: Attributes, content = ''): string {
	const written = Object.entries(attributes).map(([key, value]) =>
		value === undefined
			? ''
			: ` ${key}="${typeof value === 'number' ? short(value) : escapeXml(value)}"`
	);
	const open = `<${name}${written.join('')}`;
	return content ? `${open}>${content}</${name}>` : `${open}/>`;
}
