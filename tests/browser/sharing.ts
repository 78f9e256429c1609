/** What people do with a workbook that several have: put it on the server, open it, disagree, invite, come in. */
import type { Page } from 'playwright/test';
import { expect, find, open } from './app';
import { PASSWORD, type OwnServer } from './own-server';

/** What the head says of the open workbook's whereabouts. */
export const saved = (page: Page) => page.getByRole('banner').getByRole('status');

/** The workbook here is the server's revision of that number, and nothing waits. */
export const inStep = (page: Page, revision: number) =>
	expect(saved(page)).toHaveText(new RegExp(`^saved \\d\\d:\\d\\d, revision ${revision}$`));

/** Puts the open workbook on the server. */
export async function share(page: Page) {
	await toPage(page, 'Share and people');
	await page.getByRole('button', { name: 'Share on this server' }).click();
	await inStep(page, 1);
}

/** Opens a workbook of the server, from any page. */
export async function openShared(page: Page, title: string) {
	await toPage(page, 'Share and people');
	await page.getByRole('button', { name: `Open ${title}` }).click();
	await expect(page.getByRole('grid')).toBeVisible();
	await expect(page.getByRole('banner')).toContainText(title);
}

/** Two browsers with the same workbook open at its first revision, each at the grid. */
export async function pair(someone: () => Promise<Page>) {
	const [anna, berg] = [await someone(), await someone()];
	await open(anna);
	await share(anna);
	await toGrid(anna);
	await open(berg);
	await openShared(berg, 'One-line shop');
	await inStep(berg, 1);
	return [anna, berg] as const;
}

/** Both changed the resin price, 2.10 there and 2.20 here; here it was done without a connection. */
export async function disagree(someone: () => Promise<Page>) {
	const [anna, berg] = await pair(someone);
	await berg.context().setOffline(true);
	await change(berg, 'resin_price', '2.20');
	await change(anna, 'resin_price', '2.10');
	await inStep(anna, 2);
	await berg.context().setOffline(false);
	await expect(berg.getByText('One thing was changed by someone else too.')).toBeVisible();
	await expect(saved(berg)).toHaveText('kept here, waits for your choice');
	return [anna, berg] as const;
}

/** Follows a line of the contents to a page beside the grid. */
export async function toPage(page: Page, title: string) {
	const contents = page.getByRole('navigation', { name: 'Contents' });
	await contents.getByRole('link', { name: title, exact: true }).click();
	await expect(page.getByRole('heading', { level: 1, name: title })).toBeVisible();
}

/** Goes to the grid. */
export async function toGrid(page: Page) {
	await page.getByRole('link', { name: 'Metrewright' }).click();
	await expect(page.getByRole('grid')).toBeVisible();
}

/** Types a value into a quantity's base, with the keyboard. */
export async function change(page: Page, name: string, typed: string) {
	await find(page, name);
	await page.keyboard.type(typed);
	await page.keyboard.press('Enter');
	await expect(page.getByRole('grid').getByRole('textbox')).toBeHidden();
}

export async function signIn(page: Page, email: string, password: string) {
	await page.getByLabel('E-mail address').fill(email);
	await page.getByLabel('Password').fill(password);
	await page.getByRole('button', { name: 'Sign in' }).click();
}

/** Anna, who owns the installation, has shared the shop. */
export async function ownerWithShop(page: Page, server: OwnServer) {
	await server.addOwner('anna@plant.example');
	await open(page);
	await toPage(page, 'Share and people');
	await expect(page.getByRole('heading', { name: 'Sign in' })).toBeVisible();
	await signIn(page, 'anna@plant.example', 'a password of somebody else');
	await expect(page.getByRole('alert')).toHaveText('Address or password is wrong. Check both.');
	await expect(page.getByLabel('E-mail address')).toHaveValue('anna@plant.example');
	await signIn(page, 'anna@plant.example', PASSWORD);
	await share(page);
	await expect(page.getByRole('region', { name: 'This workbook', exact: true })).toContainText(
		'You are owner: reads, changes, invites and removes.'
	);
}

/** Invites a person, who takes it up in a browser of their own. */
export async function join(owner: Page, person: Page, name: string, role: string) {
	await toPage(owner, 'Share and people');
	const people = owner.getByRole('region', { name: 'People of this workbook' });
	await people.getByLabel('Invite by e-mail address').fill(`${name}@plant.example`);
	await people.getByLabel('Role of the invited').selectOption(role);
	await people.getByRole('button', { name: 'Invite' }).click();
	const address = await people.locator('code').innerText();
	await open(person, address);
	await expect(person.getByRole('heading', { name: 'Take up the invitation' })).toBeVisible();
	await person.getByLabel('Your name').fill(name);
	await person.getByLabel('Password').fill(PASSWORD);
	await person.getByRole('button', { name: 'Accept invitation' }).click();
	await expect(person.getByRole('region', { name: 'You', exact: true })).toContainText(name);
	await expect(person.getByText(`Invitation accepted as ${role} of`)).toBeVisible();
	// The secret of the link does not stay in the address.
	expect(new URL(person.url()).hash).toBe('');
}
