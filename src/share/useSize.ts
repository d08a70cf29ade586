// The size of an element on the screen, kept up to date.
import { type RefObject, useLayoutEffect, useState } from "react";

/** Inner width and height of an element in whole px; zero until it stands on the screen. */
export function useSize(element: RefObject<HTMLElement | null>): { width: number; height: number } {
  const [size, setSize] = useState({ width: 0, height: 0 });
  useLayoutEffect(() => {
    const it = element.current;
    if (it === null) return;
    const measure = () => {
      const now = { width: Math.floor(it.clientWidth), height: Math.floor(it.clientHeight) };
      setSize((old) => (old.width === now.width && old.height === now.height ? old : now));
    };
    const observer = new ResizeObserver(measure);
    observer.observe(it);
    measure();
    return () => observer.disconnect();
  }, [element]);
  return size;
}
