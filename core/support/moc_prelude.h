// Included by moc only (see CMAKE_AUTOMOC_MOC_OPTIONS): its parser cannot read libstdc++'s
// visibility attribute and gives up on <compare> and <concepts>.
#pragma once
#define _GLIBCXX_VISIBILITY(V)
