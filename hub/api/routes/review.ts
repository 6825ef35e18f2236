import * as contract from '../../contract/index.ts';
import type { App } from '../app.ts';
import type { ApiParts } from '../parts.ts';
import { reviewCsv } from '../reviewCsv.ts';
import { seasonReview } from '../seasonReview.ts';

/** What a season came to, for the screen and as a table. */
export function reviewRoutes(app: App, parts: ApiParts) {
  const querystring = contract.reviewRange;

  app.get(
    '/api/review',
    { schema: { querystring, response: { 200: contract.seasonReview } } },
    ({ query }) => seasonReview(parts, query),
  );

  app.get('/api/review.csv', { schema: { querystring } }, ({ query }, reply) => {
    const review = seasonReview(parts, query);
    reply.type('text/csv; charset=utf-8; header=present');
    reply.header(
      'content-disposition',
      `attachment; filename="review-${review.from}-${review.to}.csv"`,
    );
    return reviewCsv(review);
  });
}
