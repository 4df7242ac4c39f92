#pragma once

namespace coilbook {

/// The two sounds of the bench, for eyes that are on the tester: one high tone for a reading that
/// is safe, two low ones for 'look again'. Played in a thread of their own through the system's
/// sound library, which is looked for when the first tone is wanted; without it or without a device
/// they are silent, and that is no error.
namespace tones {

void playAccepted();

void playLookAgain();

} // namespace tones

} // namespace coilbook
