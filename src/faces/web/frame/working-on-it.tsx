/** A screen whose answer is not here yet. It says so after a moment only: most answers come sooner. */
export const WorkingOnIt = ({ wide = false }: { readonly wide?: boolean }) => (
  <main className={wide ? 'page bench-page' : 'page'} aria-busy="true">
    <p className="quiet anew" role="status">
      Working it out. This page stays free: the menu leads on.
    </p>
  </main>
);
