/** The table of all routes: there are no others. */
import type { Route } from './route';
import { eventRoutes } from './routes/events';
import { invitationRoutes } from './routes/invitations';
import { memberRoutes } from './routes/members';
import { operationRoutes } from './routes/operation';
import { peopleRoutes } from './routes/people';
import { resetRoutes } from './routes/reset';
import { resultRoutes } from './routes/results';
import { revisionRoutes } from './routes/revisions';
import { sessionRoutes } from './routes/session';
import { stewardRoutes } from './routes/stewards';
import { tokenRoutes } from './routes/tokens';
import { workbookRoutes } from './routes/workbooks';

export const ROUTES: readonly Route[] = [
	...operationRoutes(() => ROUTES),
	...sessionRoutes,
	...resetRoutes,
	...peopleRoutes,
	...stewardRoutes,
	...tokenRoutes,
	...invitationRoutes,
	...workbookRoutes,
	...memberRoutes,
	...revisionRoutes,
	...resultRoutes,
	...eventRoutes
];
