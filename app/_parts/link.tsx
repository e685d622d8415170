import NextLink from "next/link";
import type { ComponentProps } from "react";

/**
 * A link that fetches nothing before it is followed. Every page is made anew for whoever asks, so that a page fetched ahead
 * costs the server as much as one that is read; and opening a record is written to the trail.
 */
export const Link = (props: Omit<ComponentProps<typeof NextLink>, "prefetch">) => <NextLink prefetch={false} {...props} />;
