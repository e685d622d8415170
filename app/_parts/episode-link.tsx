import Link from "next/link";

interface EpisodeLinkProps {
  episode: { id: string; side: string; level: string; wearer: { name: string } };
}

/** Whose episode a page belongs to, and the way back to it. */
export function EpisodeLink({ episode }: EpisodeLinkProps) {
  return (
    <Link href={`/episodes/${episode.id}`} prefetch={false}>
      {episode.wearer.name}, {episode.side} {episode.level}
    </Link>
  );
}
