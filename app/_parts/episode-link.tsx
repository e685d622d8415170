import { Link } from "@/app/_parts/link";

interface EpisodeLinkProps {
  episode: { id: string; side: string; level: string; wearer: { name: string } };
}

/** Whose episode a page belongs to, and the way back to it. */
export function EpisodeLink({ episode }: EpisodeLinkProps) {
  return (
    <Link href={`/episodes/${episode.id}`}>
      {episode.wearer.name}, {episode.side} {episode.level}
    </Link>
  );
}
