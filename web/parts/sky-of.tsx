// The engine's picture of a sky; while a newer one is being worked out, it is dimmed in words and tone.
export function SkyOf({ svg, alt, caption, behind }: { svg: string; alt: string; caption: string; behind: boolean }) {
  return (
    <figure class={behind ? "sky behind" : "sky"} aria-busy={behind}>
      <div class="picture" role="img" aria-label={alt} tabIndex={0} dangerouslySetInnerHTML={{ __html: svg }} />
      <figcaption>{caption}</figcaption>
    </figure>
  );
}
