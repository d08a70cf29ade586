// The browser's root: puts the page into index.html.
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";

const root = document.getElementById("root");
if (root === null)
  throw new Error('index.html has no element with the id "root": put <div id="root"></div> back.');

createRoot(root).render(
  <StrictMode>
    <main>
      <h1>Handspan: erection plan</h1>
      <p>
        Planning aid only: not a substitute for a licensed engineer, the maker's charts and manuals, the
        crane's own limiter, or a competent person on site.
      </p>
    </main>
  </StrictMode>,
);
