import { useRef } from 'preact/hooks';
import { type MenuGroup, menuGroups, type Page } from '../pages/index.ts';
import { words } from '../words.ts';

type Listed = Page & { readonly menu: string };

const isListed = (page: Page): page is Listed => page.menu !== null;

/** Four pages in reach; the others behind "More", under short headings. */
export function Menu({ pages, path }: { pages: readonly Page[]; path: string }) {
  const listed = pages.filter(isListed);
  const others = listed.filter(({ level }) => level === 'more');
  return (
    <nav class="menu" aria-label={words.menu.label}>
      {listed
        .filter(({ level }) => level === undefined)
        .map((page) => (
          <PageLink key={page.path} page={page} path={path} />
        ))}
      {others.length > 0 && <More key={path} pages={others} path={path} />}
    </nav>
  );
}

const isHere = ({ path: own }: Page, path: string) =>
  own === '/' ? path === '/' : path === own || path.startsWith(`${own}/`);

function PageLink({ page, path }: { page: Listed; path: string }) {
  return (
    <a href={page.path} aria-current={isHere(page, path) ? 'page' : undefined}>
      {page.menu}
    </a>
  );
}

function More({ pages, path }: { pages: readonly Listed[]; path: string }) {
  const details = useRef<HTMLDetailsElement>(null);
  const summary = useRef<HTMLElement>(null);
  const close = () => {
    if (details.current) details.current.open = false;
  };
  const hasThis = pages.some((page) => isHere(page, path));
  return (
    <details
      class="more"
      ref={details}
      onKeyDown={(event) => {
        if (event.key !== 'Escape' || !details.current?.open) return;
        close();
        summary.current?.focus();
      }}
      onFocusOut={({ relatedTarget }) => {
        // A tap beside it, or Tab past its end.
        if (relatedTarget instanceof Node && !details.current?.contains(relatedTarget)) close();
      }}
    >
      <summary ref={summary} class={hasThis ? 'has-this' : undefined}>
        {words.menu.more}
        {hasThis && <span class="unseen"> {words.menu.hereToo}</span>}
      </summary>
      <div class="more-pages">
        {menuGroups.map((group) => (
          <Group key={group} group={group} pages={pages} path={path} />
        ))}
      </div>
    </details>
  );
}

function Group({
  group,
  pages,
  path,
}: {
  group: MenuGroup;
  pages: readonly Listed[];
  path: string;
}) {
  const own = pages.filter((page) => (page.group ?? 'hub') === group);
  if (own.length === 0) return null;
  const id = `menu-${group}`;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset is for fields, these are links.
    <div class="more-group" role="group" aria-labelledby={id}>
      <p id={id}>{words.menu.groups[group]}</p>
      {own.map((page) => (
        <PageLink key={page.path} page={page} path={path} />
      ))}
    </div>
  );
}
