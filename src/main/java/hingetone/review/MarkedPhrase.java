package hingetone.review;

import hingetone.review.ReviewedPhrase.Role;
import java.util.Optional;

/**
 * What a teacher says of a phrase.
 *
 * @param from the index of its first note
 * @param role what it does; empty to leave that to the program
 * @param repliesTo the index of the phrase it answers; empty to leave that to the program
 * @param remark a remark on it
 */
public record MarkedPhrase(
    int from, Optional<Role> role, Optional<Integer> repliesTo, Optional<String> remark) {}
